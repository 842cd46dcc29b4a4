package symbol

// heater is a resistor with cross lines.
func heater() *Symbol {
	return twoPole(Heater, 0.6, 0.6, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		p.Rect(0.5, -0.6, 3, 1.2)
		for k := 1; k < 4; k++ {
			x := 0.5 + 0.75*float64(k)
			p.Line(x, -0.6, x, 0.6)
		}
		p.Line(3.5, 0, 4, 0)
	})
}
