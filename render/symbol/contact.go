package symbol

// blade draws the open blade at 30° from the conductor, hinged on the left.
func blade(p *Pen) {
	p.Line(0, 0, 1, 0)
	p.Line(1, 0, 3.1, -1.21)
}

// makeContact closes when its part works (IEC 60617 07-02-01); drawn at rest.
func makeContact() *Symbol {
	return twoPole(Make, 1.25, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
	}).linked(2, -0.577)
}

// changeover rests on the break contact, above (IEC 60617 07-02-04).
func changeover() *Symbol {
	return twoPole(Changeover, 2.25, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
		p.Line(4, -2, 2.75, -2, 2.75, -1.01)
	}).linked(2, -0.577)
}
