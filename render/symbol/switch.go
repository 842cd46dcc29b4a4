package symbol

// manualSwitch is a make contact worked by hand that stays where it is put.
func manualSwitch() *Symbol {
	return twoPole(Switch, 2.3, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
		p.Link(2, -0.577, 2, -2.1)
		p.Line(1.4, -2.1, 2.6, -2.1)
	})
}

// floatSwitch is a make contact worked by a liquid's level: the link ends in a
// float on the surface.
func floatSwitch() *Symbol {
	return twoPole(FloatSwitch, 2.6, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
		p.Link(2, -0.577, 2, -1.5)
		p.Circle(2, -1.95, 0.45)
		p.sine(1.05, -1.95, 1)
		p.sine(2.95, -1.95, 1)
	})
}

// pressureSwitch is a make contact worked by pressure: the link ends in a box with the sign of what is sensed.
func pressureSwitch() *Symbol {
	return twoPole(PressureSwitch, 2.6, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
		p.Link(2, -0.577, 2, -1.4)
		p.Rect(1.4, -2.6, 1.2, 1.2)
		p.Line(1.8, -2.2, 1.8, -1.6) // p
		p.Circle(2.02, -2.0, 0.22)
	})
}

// pushSwitch is a make contact closed while it is pushed.
func pushSwitch() *Symbol {
	return twoPole(PushSwitch, 2.3, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
		p.Link(2, -0.577, 2, -2.1)
		p.Line(1.4, -1.7, 1.4, -2.1, 2.6, -2.1, 2.6, -1.7)
	})
}

// positionContact is one contact of a switch with positions: the link that works all of
// them together meets its blade.
func positionContact() *Symbol {
	return twoPole(Positions, 1.25, 0.25, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
	}).linked(2, -0.577)
}
