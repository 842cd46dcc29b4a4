package symbol

// vehicleLoads is the machine's own consumers as one box, factory wired.
func vehicleLoads() *Symbol {
	return shape(VehicleLoads, 0, -1.25, 8, 2.5, func(p *Pen, text string) {
		p.Line(0, 0, 1, 0)
		p.Rect(1, -1.25, 6, 2.5)
		if text != "" {
			p.Letter(4, 0, text, ShortSign)
		}
		p.Line(7, 0, 8, 0)
	})
}
