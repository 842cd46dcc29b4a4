package symbol

// batterySwitch is a disconnector worked by hand: a bar across its fixed contact says
// that it isolates (IEC 60617 07-13-06).
func batterySwitch() *Symbol {
	return twoPole(BatterySwitch, 2.3, 0.6, func(p *Pen, _ string) {
		blade(p)
		p.Line(3, 0, 4, 0)
		p.Line(3, -0.55, 3, 0.55)
		p.Link(2, -0.577, 2, -2.1)
		p.Line(1.4, -2.1, 2.6, -2.1)
	})
}
