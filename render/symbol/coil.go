package symbol

// coil is a relay's coil: a rectangle 2 : 1 across the conductor, the link at
// its short side.
func coil() *Symbol { return coilWith(Coil, nil) }

// coilWith is a coil with a sign in the field at its far end, 1.5 by 0.75 from (1.25, 0.75).
// Signs after IEC 60617, from memory: filled of what releases slowly, crossed of what
// operates slowly, both of what does both, a detent of what latches.
func coilWith(kind Kind, sign func(*Pen)) *Symbol {
	return twoPole(kind, 1.5, 1.5, func(p *Pen, _ string) {
		p.Line(0, 0, 1.25, 0)
		p.Rect(1.25, -1.5, 1.5, 3)
		p.Line(2.75, 0, 4, 0)
		if sign != nil {
			p.Line(1.25, 0.75, 2.75, 0.75)
			sign(p)
		}
	}).linked(2, -1.5)
}

// stayingCoils are the coils of relays whose contacts do not follow at once.
func stayingCoils() []*Symbol {
	cross := func(p *Pen) {
		p.Line(1.25, 0.75, 2.75, 1.5)
		p.Line(1.25, 1.5, 2.75, 0.75)
	}
	return []*Symbol{
		coilWith(LatchCoil, func(p *Pen) { p.Line(1.25, 0.75, 2, 1.5, 2.75, 0.75) }),
		coilWith(OffCoil, func(p *Pen) { p.Area(1.25, 0.75, 2.75, 0.75, 2.75, 1.5, 1.25, 1.5) }),
		coilWith(OnCoil, cross),
		coilWith(DelayCoil, func(p *Pen) {
			p.Line(1.25, 0.75, 2, 1.5)
			p.Line(1.25, 1.5, 2, 0.75)
			p.Area(2, 0.75, 2.75, 0.75, 2.75, 1.5, 2, 1.5)
		}),
	}
}
