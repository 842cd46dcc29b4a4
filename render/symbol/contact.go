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

// contactor is the make contact with the half circle of a contactor's at what stands
// still (IEC 60617 07-13-02).
func contactor() *Symbol {
	return twoPole(Contactor, 1.25, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
		p.Arc(3.35, 0, 0.35, 0, 180)
	}).linked(2, -0.577)
}

// contactorChangeover has the half circle at both (the sign of 07-13-02 and 07-13-04 on
// 07-02-04).
func contactorChangeover() *Symbol {
	return twoPole(ContactorCO, 2.25, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
		p.Arc(3.35, 0, 0.35, 0, 180)
		p.Line(4, -2, 2.75, -2, 2.75, -1.01)
		p.Arc(2.75, -1.55, 0.35, 270, 180)
	}).linked(2, -0.577)
}
