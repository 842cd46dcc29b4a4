package symbol

// solar is a panel with its controller: a converter box on which light falls. Nothing of the
// harness feeds it.
func solar() *Symbol {
	return shape(Solar, 0, -1.25, 4, 2.5, func(p *Pen, _ string) {
		p.Rect(0.75, -1.25, 2.5, 2.5)
		p.Line(0.75, 1.25, 3.25, -1.25)
		p.direct(2.65, 0.55, 0.8)
		for k := range 2 { // light, after the sign of a photovoltaic cell
			y := -0.95 + 0.55*float64(k)
			p.Line(0, y, 0.45, y)
			p.Shape(0.35, y-0.15, 0.7, y, 0.35, y+0.15)
		}
		p.Line(3.25, 0, 4, 0)
	})
}

// rectifier is a charger on the mains: alternating to direct (IEC 60617 06-14-03).
func rectifier() *Symbol {
	return shape(Rectifier, 0, -1.25, 4, 2.5, func(p *Pen, _ string) {
		p.Rect(0.75, -1.25, 2.5, 2.5)
		p.Line(0.75, 1.25, 3.25, -1.25)
		p.sine(1.5, -0.65, 0.8)
		p.direct(2.65, 0.55, 0.8)
		p.Line(3.25, 0, 4, 0)
	})
}
