package symbol

// motor is a circle with the letter M over the direct-current sign.
func motor() *Symbol {
	return twoPole(Motor, 1.5, 1.5, func(p *Pen, _ string) { motorShape(p) })
}

func motorShape(p *Pen) {
	p.Line(0, 0, 0.5, 0)
	p.Circle(2, 0, 1.5)
	p.Letter(2, -0.25, "M", LetterSize)
	p.direct(2, 0.65, 1.2)
	p.Line(3.5, 0, 4, 0)
}
