package symbol

// resistor is a hollow rectangle 3 : 1 (IEC 60617 04-01-01).
func resistor() *Symbol {
	return twoPole(Resistor, 0.5, 0.5, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		p.Rect(0.5, -0.5, 3, 1)
		p.Line(3.5, 0, 4, 0)
	})
}
