package symbol

import "fusewright/render/scene"

// incoming is the flag of a line that comes from another place of the drawing.
func incoming() *Symbol {
	return &Symbol{
		Kind: Incoming,
		Body: scene.Rect{Y: -0.5, W: 2, H: 1},
		Pins: []Pin{{"out", scene.Point{X: 2}, East}},
		Draw: func(p *Pen, _ string) {
			p.Line(0, -0.5, 1, -0.5, 1.5, 0, 1, 0.5, 0, 0.5)
			p.Line(1.5, 0, 2, 0)
		},
	}
}

// outgoing is the flag of a line that goes on at another place of the drawing.
func outgoing() *Symbol {
	return &Symbol{
		Kind: Outgoing,
		Body: scene.Rect{Y: -0.5, W: 2.5, H: 1},
		Pins: []Pin{{"in", scene.Point{}, West}},
		Draw: func(p *Pen, _ string) {
			p.Line(0, 0, 0.5, 0)
			p.Line(2, -0.5, 0.5, -0.5, 0.5, 0.5, 2, 0.5)
			p.Line(2, -0.5, 2.5, 0, 2, 0.5)
		},
	}
}
