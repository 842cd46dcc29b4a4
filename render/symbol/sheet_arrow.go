package symbol

// incoming is the flag of a line that comes from another place of the drawing.
func incoming() *Symbol {
	return shape(Incoming, 0, -0.5, 2, 1, func(p *Pen, _ string) {
		p.Line(0, -0.5, 1, -0.5, 1.5, 0, 1, 0.5, 0, 0.5)
		p.Line(1.5, 0, 2, 0)
	})
}

// outgoing is the flag of a line that goes on at another place of the drawing.
func outgoing() *Symbol {
	return shape(Outgoing, 0, -0.5, 2.5, 1, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		p.Line(2, -0.5, 0.5, -0.5, 0.5, 0.5, 2, 0.5)
		p.Line(2, -0.5, 2.5, 0, 2, 0.5)
	})
}
