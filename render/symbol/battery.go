package symbol

// battery stands upright, plus at the top: two cells, the long thin plate plus.
func battery() *Symbol {
	return shape(Battery, -1.75, 0, 3.5, 5, func(p *Pen, _ string) {
		p.Line(0, 0, 0, 1.4)
		for k := range 2 {
			cellPlates(p, 0, 1.4+1.5*float64(k), 0.7)
		}
		p.Line(0, 2.1, 0, 2.9)
		p.Line(0, 3.6, 0, 5)
		batterySigns(p, -1.1, 0.7)
	})
}

// bank is a further battery: it hangs from the conductor by which it is charged and feeds on.
func bank() *Symbol {
	return shape(Bank, 0, -0.25, 4, 6.35, func(p *Pen, _ string) {
		hang(p)
		p.Line(2, 0, 2, 1)
		for k := range 2 {
			cellPlates(p, 2, 1+1.5*float64(k), 0.7)
		}
		p.Line(2, 1.7, 2, 2.5)
		p.Line(2, 3.2, 2, 4.5)
	})
}

// batteryString are batteries in series, the first and the last of them; between their terminals
// stand the links, which have wire numbers.
func batteryString() *Symbol {
	return shape(String, -1.75, 0, 3.5, 5, func(p *Pen, _ string) {
		p.Line(0, 0, 0, StringTop-1.2)
		inString(p, 0, StringTop)
		p.Line(0, StringTop+LinkLong+1.2, 0, 5)
		batterySigns(p, -1.1, 0.4)
	})
}

// bankString is the same of a further battery.
func bankString() *Symbol {
	return shape(BankString, 0, -0.25, 4, 6.35, func(p *Pen, _ string) {
		hang(p)
		p.Line(2, 0, 2, BankTop-1.2)
		inString(p, 2, BankTop)
		p.Line(2, BankTop+LinkLong+1.2, 2, 4.5)
	})
}

// Where the links of batteries in series begin and how far they reach, in modules below the row of
// the symbol's first conductor.
const (
	StringTop = 2.0
	BankTop   = 2.0
	LinkLong  = 1.0
	postR     = 0.18 // of the terminals at their ends
)

// inString draws a battery on each side of the links, which begin at y, and the terminals there.
func inString(p *Pen, x, y float64) {
	for _, at := range []float64{y - 1.2, y + LinkLong + 0.5} {
		cellPlates(p, x, at, 0.7)
	}
	p.Line(x, y-0.5, x, y-2*postR)
	p.Line(x, y+LinkLong+2*postR, x, y+LinkLong+0.5)
	p.Circle(x, y-postR, postR)
	p.Circle(x, y+LinkLong+postR, postR)
}

// cellPlates draws a cell, apart the distance of its plates.
func cellPlates(p *Pen, x, y, apart float64) {
	p.Line(x-1.5, y, x+1.5, y)
	p.Thick(0.9, x-0.75, y+apart, x+0.75, y+apart)
}

// hang draws the conductor from which a further battery hangs, its negative post and its sign of plus.
func hang(p *Pen) {
	p.Line(0, 0, 4, 0)
	p.Dot(2, 0)
	p.Circle(2, 5, 0.5)
	p.Line(1.72, 5, 2.28, 5)
	batterySigns(p, 0.9, 0.5)
}

// batterySigns draws the plus.
func batterySigns(p *Pen, x, y float64) {
	p.Line(x-0.3, y, x+0.3, y)
	p.Line(x, y-0.3, x, y+0.3)
}
