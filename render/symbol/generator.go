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

// alternator is the same where it feeds to the right, its negative side listed with the grounds; box draws
// what stands for its rectifier, 2.5 wide from x on.
func alternator(box func(p *Pen, x float64)) *Symbol {
	return shape(Alternator, 0, -1.5, 8, 3, func(p *Pen, _ string) {
		p.Circle(2, 0, 1.5)
		p.Letter(2, -0.3, "G", LetterSize)
		p.sine(2, 0.85, 1)
		p.Line(3.5, 0, 4, 0)
		p.Rect(4, -1.25, 2.5, 2.5)
		box(p, 4)
		p.Line(6.5, 0, 8, 0)
	})
}

// converts is the diagonal of alternating to direct.
func converts(p *Pen, x float64) {
	p.Line(x, 1.25, x+2.5, -1.25)
	p.sine(x+0.75, -0.65, 0.8)
	p.direct(x+1.8, 0.55, 0.8)
}

// rectifies is a diode that lets current out to the right.
func rectifies(p *Pen, x float64) {
	p.Line(x, 0, x+2.5, 0)
	p.Area(x+1.8, 0, x+0.7, -0.65, x+0.7, 0.65)
	p.Line(x+1.8, -0.7, x+1.8, 0.7)
}
