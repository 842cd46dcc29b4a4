package symbol

// diode points against the feed, as a suppressor across a coil stands: its bar
// is at "in" (IEC 60617 05-03-01).
func diode() *Symbol { return twoPole(Diode, 0.75, 0.75, func(p *Pen, _ string) { diodeShape(p, 0) }) }

// feedDiode points with the feed: its bar is at "out".
func feedDiode() *Symbol {
	return twoPole(FeedDiode, 0.75, 0.75, func(p *Pen, _ string) {
		p.Line(0, 0, 4, 0)
		p.Area(2.65, 0, 1.35, -0.75, 1.35, 0.75)
		p.Line(2.65, -0.75, 2.65, 0.75)
	})
}

// zener is the diode with the bent bar.
func zener() *Symbol {
	return twoPole(Zener, 0.75, 0.75, func(p *Pen, _ string) { diodeShape(p, 0.35) })
}

func diodeShape(p *Pen, hook float64) {
	p.Line(0, 0, 4, 0)
	p.Area(1.35, 0, 2.65, -0.75, 2.65, 0.75)
	if hook > 0 {
		p.Line(1.35+hook, -0.75, 1.35, -0.75, 1.35, 0.75)
	} else {
		p.Line(1.35, -0.75, 1.35, 0.75)
	}
}
