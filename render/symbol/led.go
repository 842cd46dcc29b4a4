package symbol

// led is a lamp of light-emitting diodes: a diode in a circle with two arrows
// that leave it.
func led() *Symbol {
	return twoPole(LED, 1.85, 1.25, func(p *Pen, _ string) {
		p.Line(0, 0, 4, 0)
		p.Circle(2, 0, 1.25)
		p.Area(1.4, -0.65, 2.5, 0, 1.4, 0.65)
		p.Line(2.5, -0.7, 2.5, 0.7)
		p.arrow(2.65, -1.15, 0.65, -0.65)
		p.arrow(3.15, -0.75, 0.65, -0.65)
	})
}
