package symbol

// voltmeter is an indicating instrument: a circle with the letter of what it shows
// (IEC 60617 08-02-01).
func voltmeter() *Symbol {
	return twoPole(Voltmeter, 1.25, 1.25, func(p *Pen, _ string) {
		p.Line(0, 0, 0.75, 0)
		p.Circle(2, 0, 1.25)
		p.Letter(2, 0, "V", LetterSize)
		p.Line(3.25, 0, 4, 0)
	})
}
