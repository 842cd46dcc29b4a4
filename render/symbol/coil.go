package symbol

// coil is a relay's coil: a rectangle 2 : 1 across the conductor, the link at
// its short side.
func coil() *Symbol {
	return twoPole(Coil, 1.5, 1.5, func(p *Pen, _ string) {
		p.Line(0, 0, 1.25, 0)
		p.Rect(1.25, -1.5, 1.5, 3)
		p.Line(2.75, 0, 4, 0)
	}).linked(2, -1.5)
}
