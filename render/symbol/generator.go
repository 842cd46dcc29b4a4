package symbol

// generator is the engine-driven alternator with its rectifier and regulator:
// a converter box (alternating to direct) and the machine behind it. The direct
// side is at "in", the machine's return at "out".
func generator() *Symbol {
	return shape(Generator, 0, -1.5, 8, 3, func(p *Pen, _ string) {
		p.Line(0, 0, 1, 0)
		p.Rect(1, -1.25, 2.5, 2.5)
		p.Line(1, 1.25, 3.5, -1.25)
		p.direct(1.75, -0.65, 0.8)
		p.sine(2.85, 0.55, 0.8)
		machine(p)
	})
}

// machine is the alternator behind the box of its rectifier.
func machine(p *Pen) {
	p.Line(3.5, 0, 4, 0)
	p.Circle(5.5, 0, 1.5)
	p.Letter(5.5, -0.3, "G", LetterSize)
	p.sine(5.5, 0.85, 1)
	p.Line(7, 0, 8, 0)
}
