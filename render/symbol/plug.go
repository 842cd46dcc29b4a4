package symbol

// plug is one pole of a plug connection: the open arc of the socket contact on
// the harness, the filled bar of the pin on the part (IEC 60617 03-03-05).
func plug() *Symbol {
	return plugPole(Plug, func(p *Pen) {
		p.Line(0, 0, 0.15, 0)
		p.Arc(0.6, 0, 0.45, 90, 180)
		p.Thick(0.9, 0.5, 0, 1, 0)
	})
}

// plugBack is the same with the harness on the right.
func plugBack() *Symbol {
	return plugPole(PlugBack, func(p *Pen) {
		p.Thick(0.9, 0, 0, 0.5, 0)
		p.Arc(0.4, 0, 0.45, 270, 180)
		p.Line(0.85, 0, 1, 0)
	})
}

// ieeePlug is a pole as two arrow heads, one in the other.
func ieeePlug(k Kind, left, right float64) *Symbol {
	return plugPole(k, func(p *Pen) {
		p.Line(0, 0, 1, 0)
		for _, x := range []float64{0.5, 0.85} {
			p.Line(x+left, -0.45, x+right, 0, x+left, 0.45)
		}
	})
}

func plugPole(k Kind, draw func(*Pen)) *Symbol {
	return shape(k, 0, -0.5, 1, 1, func(p *Pen, _ string) { draw(p) })
}
