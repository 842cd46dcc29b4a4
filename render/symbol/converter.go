package symbol

// converter is a square with a diagonal: power goes out otherwise than it came in
// (IEC 60617 06-14-01).
func converter() *Symbol {
	return twoPole(Converter, 1.25, 1.25, func(p *Pen, _ string) {
		p.Line(0, 0, 0.75, 0)
		p.Rect(0.75, -1.25, 2.5, 2.5)
		p.Line(0.75, 1.25, 3.25, -1.25)
		p.Line(3.25, 0, 4, 0)
	})
}
