package symbol

// electronics is a box with a short sign: a unit with its own circuit inside.
func electronics() *Symbol {
	return twoPole(Electronics, 1.25, 1.25, func(p *Pen, text string) {
		p.Line(0, 0, 0.25, 0)
		p.Rect(0.25, -1.25, 3.5, 2.5)
		if text != "" {
			p.Letter(2, 0, text, ShortSign)
		}
		p.Line(3.75, 0, 4, 0)
	})
}
