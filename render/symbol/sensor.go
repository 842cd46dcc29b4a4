package symbol

// sensor is a box with the diamond of a sensing element.
func sensor() *Symbol {
	return twoPole(Sensor, 1.25, 1.25, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		p.Rect(0.5, -1.25, 3, 2.5)
		p.Shape(2, -0.9, 2.9, 0, 2, 0.9, 1.1, 0)
		p.Line(3.5, 0, 4, 0)
	})
}
