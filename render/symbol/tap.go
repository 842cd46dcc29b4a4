package symbol

import "fusewright/render/scene"

// tap is a point of the factory loom: an arrow out of it.
func tap() *Symbol {
	return &Symbol{
		Kind: Tap,
		Body: scene.Rect{X: 0, Y: -1, W: 2, H: 2},
		Pins: []Pin{{"out", scene.Point{X: 2}, East}},
		Draw: func(p *Pen, _ string) {
			p.Shape(0, -1, 1.7, 0, 0, 1)
			p.Line(1.7, 0, 2, 0)
		},
	}
}
