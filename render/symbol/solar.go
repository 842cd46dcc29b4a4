package symbol

// solar is a photovoltaic generator: the box of a generator with the sign of light
// falling on it (IEC 60617 06-18-01, from memory).
func solar() *Symbol {
	return twoPole(Solar, 2.6, 1.25, func(p *Pen, _ string) {
		p.Line(0, 0, 0.75, 0)
		p.Rect(0.75, -1.25, 2.5, 2.5)
		p.Letter(1.4, 0, "G", 3.4)
		p.Line(2.3, -0.7, 2.3, 0.7) // a cell: the long plate and the short
		p.Thick(BarMM/2, 2.7, -0.35, 2.7, 0.35)
		p.arrow(0.9, -2.5, 0.75, 0.9)
		p.arrow(1.9, -2.5, 0.75, 0.9)
		p.Line(3.25, 0, 4, 0)
	})
}
