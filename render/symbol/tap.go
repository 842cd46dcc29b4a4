package symbol

// tap is a point of the factory loom: an arrow out of it.
func tap() *Symbol {
	return shape(Tap, 0, -1, 2, 2, func(p *Pen, _ string) {
		p.Shape(0, -1, 1.7, 0, 0, 1)
		p.Line(1.7, 0, 2, 0)
	})
}
