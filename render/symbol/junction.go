package symbol

// junction is the dot of wires that join.
func junction() *Symbol {
	return shape(Junction, -0.25, -0.25, 0.5, 0.5, func(p *Pen, _ string) { p.Dot(0, 0) })
}

// splice is a crimped joint: a small sleeve round the dot.
func splice() *Symbol {
	return shape(Splice, 0, -0.5, 2, 1, func(p *Pen, _ string) {
		p.Rect(0.4, -0.4, 1.2, 0.8)
		p.Line(0, 0, 2, 0)
		p.Dot(1, 0)
	})
}
