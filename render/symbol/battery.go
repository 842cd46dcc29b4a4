package symbol

// battery stands upright, plus at the top: two cells, the long thin plate plus.
func battery() *Symbol {
	return shape(Battery, -1.75, 0, 3.5, 5, func(p *Pen, _ string) {
		p.Line(0, 0, 0, 1.4)
		for k := range 2 {
			y := 1.4 + 1.5*float64(k)
			p.Line(-1.5, y, 1.5, y)
			p.Thick(0.9, -0.75, y+0.7, 0.75, y+0.7)
		}
		p.Line(0, 2.1, 0, 2.9)
		p.Line(0, 3.6, 0, 5)
		p.Line(-1.4, 0.7, -0.8, 0.7)
		p.Line(-1.1, 0.4, -1.1, 1)
	})
}

// bank is a further battery: it hangs from the conductor by which it is charged and feeds on.
func bank() *Symbol {
	return shape(Bank, 0, -0.25, 4, 6.35, func(p *Pen, _ string) {
		p.Line(0, 0, 4, 0)
		p.Dot(2, 0)
		p.Line(2, 0, 2, 1)
		for k := range 2 {
			y := 1 + 1.5*float64(k)
			p.Line(0.5, y, 3.5, y)
			p.Thick(0.9, 1.25, y+0.7, 2.75, y+0.7)
		}
		p.Line(2, 1.7, 2, 2.5)
		p.Line(2, 3.2, 2, 4.5)
		p.Circle(2, 5, 0.5)
		p.Line(1.72, 5, 2.28, 5)
		p.Line(0.6, 0.5, 1.2, 0.5)
		p.Line(0.9, 0.2, 0.9, 0.8)
	})
}
