package symbol

// socket is an outlet: the half circle of a socket contact and its pin, in a
// housing, feed on the left and return on the right.
func socket() *Symbol {
	return twoPole(Socket, 1.25, 1.25, func(p *Pen, _ string) {
		p.Rect(0.5, -1.25, 3, 2.5)
		p.Line(0, 0, 0.9, 0)
		p.Arc(1.75, 0, 0.7, 90, 180)
		p.Line(0.9, 0, 1.05, 0)
		p.Thick(0.9, 1.75, 0, 2.6, 0)
		p.Line(2.6, 0, 4, 0)
	})
}
