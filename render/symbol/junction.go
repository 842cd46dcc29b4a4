package symbol

import "fusewright/render/scene"

// junction is the dot of wires that join.
func junction() *Symbol {
	return &Symbol{
		Kind: Junction,
		Body: scene.Rect{X: -0.25, Y: -0.25, W: 0.5, H: 0.5},
		Pins: []Pin{{"", scene.Point{}, West}},
		Draw: func(p *Pen, _ string) { p.Dot(0, 0) },
	}
}

// splice is a crimped joint: a small sleeve round the dot.
func splice() *Symbol {
	return &Symbol{
		Kind: Splice,
		Body: scene.Rect{X: 0, Y: -0.5, W: 2, H: 1},
		Pins: []Pin{{"in", scene.Point{}, West}, {"out", scene.Point{X: 2}, East}},
		Draw: func(p *Pen, _ string) {
			p.Rect(0.4, -0.4, 1.2, 0.8)
			p.Line(0, 0, 2, 0)
			p.Dot(1, 0)
		},
	}
}
