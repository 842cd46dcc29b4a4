package symbol

// ground builds a symbol that hangs from its pin.
func ground(k Kind, draw func(*Pen, string)) *Symbol {
	return shape(k, -1, 0, 2, 1.6, draw)
}

// frameGround is a line with three oblique strokes (IEC 60617 02-15-04).
func frameGround() *Symbol {
	return ground(Frame, func(p *Pen, _ string) {
		p.Line(0, 0, 0, 0.9)
		p.Line(-0.9, 0.9, 0.9, 0.9)
		for _, x := range []float64{-0.8, 0, 0.8} {
			p.Line(x, 0.9, x-0.4, 1.55)
		}
	})
}

// groundBar is the thick bar on which returns meet.
func groundBar() *Symbol {
	return ground(GroundBar, func(p *Pen, _ string) {
		p.Line(0, 0, 0, 1.2)
		p.Thick(BarMM, -0.9, 1.2, 0.9, 1.2)
	})
}

// negative is the negative post of the battery: an open terminal with a minus.
func negative() *Symbol {
	return ground(Negative, func(p *Pen, _ string) {
		p.Line(0, 0, 0, 0.6)
		p.Circle(0, 1.1, 0.5)
		p.Line(-0.28, 1.1, 0.28, 1.1)
	})
}
