package symbol

// fuse is a rectangle 3 : 1 with the conductor through it (IEC 60617 07-21-01).
func fuse() *Symbol {
	return twoPole(Fuse, 0.5, 0.5, func(p *Pen, _ string) {
		p.Rect(0.5, -0.5, 3, 1)
		p.Line(0, 0, 4, 0)
	})
}

// spareWay is the dashed outline of a fuse that is not fitted.
func spareWay() *Symbol {
	return twoPole(SpareWay, 0.5, 0.5, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		p.Link(0.5, -0.5, 3.5, -0.5, 3.5, 0.5, 0.5, 0.5, 0.5, -0.5)
	})
}
