package symbol

// breaker is a make contact with a cross at the fixed contact and the hooked
// sign of the thermal release, joined by a link.
func breaker() *Symbol {
	return twoPole(Breaker, 2.5, 0.5, func(p *Pen, _ string) {
		p.Line(0, 0, 1, 0)
		p.Line(1, 0, 3, -1.15)
		p.Line(3, 0, 4, 0)
		p.Line(2.75, -0.25, 3.25, 0.25)
		p.Line(2.75, 0.25, 3.25, -0.25)
		p.Link(2, -0.58, 2, -1.6)
		p.Line(0.9, -1.6, 1.6, -1.6, 1.6, -2.3, 2.4, -2.3, 2.4, -1.6, 3.1, -1.6)
	})
}
