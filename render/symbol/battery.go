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
