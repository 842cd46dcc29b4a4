package symbol

// horn is a small body with a flared mouth.
func horn() *Symbol {
	return twoPole(Horn, 1.4, 1.4, func(p *Pen, _ string) {
		p.Line(0, 0, 0.75, 0)
		p.Rect(0.75, -0.6, 1, 1.2)
		p.Shape(1.75, -0.6, 3.25, -1.3, 3.25, 1.3, 1.75, 0.6)
		p.Line(3.25, 0, 4, 0)
	})
}
