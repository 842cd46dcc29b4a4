package symbol

// pump is a motor linked to the sign of a fluid pump: a circle with a filled
// triangle that points out of it.
func pump() *Symbol {
	return twoPole(Pump, 3.5, 1.5, func(p *Pen, _ string) {
		motorShape(p)
		impeller(p)
	})
}

func impeller(p *Pen) {
	p.Link(2, -1.5, 2, -1.9)
	p.Circle(2, -2.65, 0.75)
	p.Area(2.75, -2.65, 2.2, -2.95, 2.2, -2.35)
}
