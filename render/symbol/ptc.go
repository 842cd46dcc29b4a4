package symbol

// ptc is a resistor with the bent oblique line of a temperature dependence.
func ptc() *Symbol {
	return twoPole(PTC, 1.2, 1.8, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		p.Rect(0.5, -0.5, 3, 1)
		p.Line(3.5, 0, 4, 0)
		p.Thick(ThinMM, 0.5, 1, 1.2, 1, 2.8, -1)
		p.Letter(2.75, 1.1, "+t°", ShortSign)
	})
}
