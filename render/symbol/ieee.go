package symbol

// IEEE returns the symbols after IEEE 315 (ANSI Y32.2), shapes from memory. They
// have the boxes and pins of the IEC set, so that either fits any layout. Signs
// the two standards share are drawn once.
func IEEE() *Set { return ieeeSet }

var ieeeSet = newIEEE()

func newIEEE() *Set {
	s := &Set{name: "IEEE 315", byKind: map[Kind]*Symbol{}}
	s.order = iecSet.order
	for _, k := range s.order {
		s.byKind[k] = iecSet.byKind[k]
	}
	for _, sym := range []*Symbol{
		ieeeFuse(), ieeeBreaker(), ieeePTC(), ieeeResistor(), ieeeHeater(), ieeeCoil(),
		ieeeMake(Make), ieeeChangeover(Changeover), ieeeMake(Contactor), ieeeChangeover(ContactorCO),
		ieeePositions(), ieeeSwitch(), ieeePush(), ieeeFloat(), ieeePressure(),
		ieeeLamp(), ieeeMotor(), ieeePump(), ieeeHorn(), ieeeSocket(), ieeeGenerator(), alternator(rectifies),
		ieeePlug(Plug, -0.4, 0), ieeePlug(PlugBack, 0.15, -0.25),
	} {
		s.byKind[sym.Kind] = sym
	}
	return s
}

// ieeeFuse is a flat wave between the conductors.
func ieeeFuse() *Symbol {
	return twoPole(Fuse, 0.65, 0.65, func(p *Pen, _ string) {
		p.Line(0, 0, 0.8, 0)
		p.Arc(1.4, 0, 0.6, 180, -180)
		p.Arc(2.6, 0, 0.6, 180, 180)
		p.Line(3.2, 0, 4, 0)
	})
}

// zigzag draws three teeth from x to x+w, a high.
func zigzag(p *Pen, x, w, a float64) {
	xy := []float64{x, 0}
	for k := range 6 {
		y := -a
		if k%2 == 1 {
			y = a
		}
		xy = append(xy, x+w*(float64(k)+0.5)/6, y)
	}
	p.Line(append(xy, x+w, 0)...)
}

// ieeeResistor is the zigzag.
func ieeeResistor() *Symbol {
	return twoPole(Resistor, 0.6, 0.6, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		zigzag(p, 0.5, 3, 0.55)
		p.Line(3.5, 0, 4, 0)
	})
}

// ieeeHeater is the zigzag in the outline of a unit.
func ieeeHeater() *Symbol {
	return twoPole(Heater, 1, 1, func(p *Pen, _ string) {
		p.Line(0, 0, 0.7, 0)
		p.Rect(0.25, -0.95, 3.5, 1.9)
		zigzag(p, 0.7, 2.6, 0.55)
		p.Line(3.3, 0, 4, 0)
	})
}

// ieeePTC is the zigzag with the oblique line of a temperature dependence.
func ieeePTC() *Symbol {
	return twoPole(PTC, 1.2, 1.8, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		zigzag(p, 0.5, 3, 0.5)
		p.Line(3.5, 0, 4, 0)
		p.Thick(ThinMM, 0.5, 1, 1.2, 1, 2.8, -1)
		p.Letter(2.75, 1.15, "+t°", ShortSign)
	})
}

// ieeeBreaker is an arc over the gap between two open contacts, with the box of
// its thermal release.
func ieeeBreaker() *Symbol {
	return twoPole(Breaker, 2.5, 0.5, func(p *Pen, _ string) {
		p.Line(0, 0, 0.5, 0)
		p.Circle(0.75, 0, 0.25)
		p.Circle(3.25, 0, 0.25)
		p.Line(3.5, 0, 4, 0)
		p.Arc(2, 0.55, 1.6, 150, -120)
		p.Link(2, -1.05, 2, -1.5)
		p.Line(0.9, -1.5, 1.6, -1.5, 1.6, -2.2, 2.4, -2.2, 2.4, -1.5, 3.1, -1.5)
	})
}

// ieeeCoil is a winding of three turns across the conductor.
func ieeeCoil() *Symbol {
	return twoPole(Coil, 1.5, 1.5, func(p *Pen, _ string) {
		p.Line(0, 0, 0.6, 0, 0.6, -1.5, 2, -1.5)
		for k := range 3 {
			p.Arc(2, -1+float64(k), 0.5, 90, -180)
		}
		p.Line(2, 1.5, 3.4, 1.5, 3.4, 0, 4, 0)
	}).linked(2, -1.5)
}

// plates draws the two facing contact plates of a relay contact.
func plates(p *Pen) {
	p.Line(0, 0, 1.6, 0)
	p.Line(1.6, -0.8, 1.6, 0.25)
	p.Line(2.4, -0.8, 2.4, 0.25)
	p.Line(2.4, 0, 4, 0)
}

// ieeeMake is an open contact: two plates that do not touch. A contactor's is the same.
func ieeeMake(k Kind) *Symbol {
	return twoPole(k, 1.25, 0.25, func(p *Pen, _ string) { plates(p) }).linked(2, -0.577)
}

// ieeeChangeover has the break contact above: two plates crossed by a stroke.
func ieeeChangeover(k Kind) *Symbol {
	return twoPole(k, 2.6, 0.25, func(p *Pen, _ string) {
		plates(p)
		p.Line(0.8, 0, 0.8, -2, 1.6, -2)
		p.Dot(0.8, 0)
		p.Line(1.6, -2.5, 1.6, -1.5)
		p.Line(2.4, -2.5, 2.4, -1.5)
		p.Line(1.3, -1.5, 2.7, -2.5)
		p.Line(2.4, -2, 4, -2)
	}).linked(2, -0.577)
}

// openSwitch draws the two round contacts and the blade between them.
func openSwitch(p *Pen) {
	p.Line(0, 0, 0.6, 0)
	p.Circle(0.85, 0, 0.25)
	p.Line(1.07, -0.12, 3.1, -1.21)
	p.Circle(3.15, 0, 0.25)
	p.Line(3.4, 0, 4, 0)
}

// ieeeSwitch is a single-throw switch that stays where it is put.
func ieeeSwitch() *Symbol {
	return twoPole(Switch, 1.4, 0.3, func(p *Pen, _ string) { openSwitch(p) })
}

// ieeePositions is the same where a link works several together.
func ieeePositions() *Symbol {
	return twoPole(Positions, 1.4, 0.3, func(p *Pen, _ string) { openSwitch(p) }).linked(2, -0.62)
}

// ieeeFloat is a single-throw switch with a float on a stem at its blade.
func ieeeFloat() *Symbol {
	return twoPole(FloatSwitch, 2.6, 0.3, func(p *Pen, _ string) {
		openSwitch(p)
		p.Line(2.1, -0.68, 2.1, -1.6)
		p.Circle(2.1, -2.05, 0.45)
	})
}

// ieeePressure is a single-throw switch with the dome of a diaphragm on a stem at its blade.
func ieeePressure() *Symbol {
	return twoPole(PressureSwitch, 2.6, 0.3, func(p *Pen, _ string) {
		openSwitch(p)
		p.Line(2.1, -0.68, 2.1, -1.6)
		p.Arc(2.1, -1.6, 0.8, 180, -180)
		p.Line(1.3, -1.6, 2.9, -1.6)
	})
}

// ieeePush is a bar over two round contacts, pushed down on them.
func ieeePush() *Symbol {
	return twoPole(PushSwitch, 2, 0.3, func(p *Pen, _ string) {
		p.Line(0, 0, 0.6, 0)
		p.Circle(0.85, 0, 0.25)
		p.Circle(3.15, 0, 0.25)
		p.Line(3.4, 0, 4, 0)
		p.Line(0.6, -0.8, 3.4, -0.8)
		p.Line(2, -0.8, 2, -1.9)
		p.Line(1.5, -1.9, 2.5, -1.9)
	})
}

// ieeeLamp is a bulb with the loop of its filament.
func ieeeLamp() *Symbol {
	return twoPole(Lamp, 1.25, 1.25, func(p *Pen, _ string) {
		p.Circle(2, 0, 1.25)
		p.Line(0, 0, 1.6, 0)
		p.Arc(2, 0, 0.4, 180, -180)
		p.Line(2.4, 0, 4, 0)
	})
}

// lettered is a machine: a circle with its letter.
func lettered(p *Pen, text string) {
	p.Line(0, 0, 0.5, 0)
	p.Circle(2, 0, 1.5)
	p.Letter(2, 0, text, LetterSize)
	p.Line(3.5, 0, 4, 0)
}

func ieeeMotor() *Symbol {
	return twoPole(Motor, 1.5, 1.5, func(p *Pen, _ string) { lettered(p, "M") })
}

func ieeePump() *Symbol {
	return twoPole(Pump, 3.5, 1.5, func(p *Pen, _ string) {
		lettered(p, "M")
		impeller(p)
	})
}

// ieeeGenerator is the alternator behind the converter box of its rectifier.
func ieeeGenerator() *Symbol {
	return shape(Generator, 0, -1.5, 8, 3, func(p *Pen, _ string) {
		p.Line(0, 0, 1, 0)
		p.Rect(1, -1.25, 2.5, 2.5)
		diodeOver(p, 2.25)
		machine(p)
	})
}

// diodeOver draws a diode that lets current out to the left.
func diodeOver(p *Pen, x float64) {
	p.Line(x-1.25, 0, x+1.25, 0)
	p.Area(x-0.55, 0, x+0.55, -0.65, x+0.55, 0.65)
	p.Line(x-0.55, -0.7, x-0.55, 0.7)
}

// ieeeHorn is a square driver with its mouth.
func ieeeHorn() *Symbol {
	return twoPole(Horn, 1.4, 1.4, func(p *Pen, _ string) {
		p.Line(0, 0, 0.75, 0)
		p.Rect(0.75, -0.75, 1.25, 1.5)
		p.Shape(2, -0.35, 3.25, -1.3, 3.25, 1.3, 2, 0.35)
		p.Line(3.25, 0, 4, 0)
	})
}

// ieeeSocket is a two-contact receptacle: the open ends of its contacts in a
// housing.
func ieeeSocket() *Symbol {
	return twoPole(Socket, 1.25, 1.25, func(p *Pen, _ string) {
		p.Rect(0.5, -1.25, 3, 2.5)
		const r = 0.45
		p.Line(0, 0, 1.3-r, 0)
		p.Arc(1.3, 0, r, 60, 240)
		p.Line(4, 0, 2.7+r, 0)
		p.Arc(2.7, 0, r, -120, 240)
	})
}
