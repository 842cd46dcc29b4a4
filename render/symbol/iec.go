package symbol

// SetByName returns a family of symbols by its short name: "IEC" or "IEEE";
// anything else gives IEC.
func SetByName(name string) Set {
	if name == "IEEE" {
		return IEEE()
	}
	return IEC()
}

// IEC returns the symbols after IEC 60617.
func IEC() Set { return iecSet }

var iecSet = newIEC()

// newIEC is the set after IEC 60617, shapes and proportions from memory where the
// standard's numbers are not at hand.
func newIEC() *family {
	s := &family{name: "IEC 60617", byKind: map[Kind]*Symbol{}}
	for _, sym := range []*Symbol{
		battery(), generator(), vehicleLoads(), tap(),
		fuse(), breaker(), ptc(), spareWay(),
		coil(), makeContact(), changeover(), resistor(), diode(), zener(),
		manualSwitch(), pushSwitch(),
		lamp(), led(), heater(), motor(), pump(), horn(), socket(), electronics(), sensor(),
		plug(), plugBack(),
		frameGround(), groundBar(), negative(),
		junction(), splice(), incoming(), outgoing(),
	} {
		s.order = append(s.order, sym.Kind)
		s.byKind[sym.Kind] = sym
	}
	return s
}
