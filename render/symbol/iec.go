package symbol

import "slices"

// Set is a family of symbols after one standard.
type Set struct {
	name   string
	order  []Kind
	byKind map[Kind]*Symbol
}

// Name is the standard's name, as the drawing's notes print it.
func (s *Set) Name() string { return s.name }

// Kinds lists all kinds in catalogue order.
func (s *Set) Kinds() []Kind { return s.order }

// Symbol returns the shape of a kind; an unknown kind gets the electronic unit's box.
func (s *Set) Symbol(k Kind) *Symbol {
	if sym := s.byKind[k]; sym != nil {
		return sym
	}
	return s.byKind[Electronics]
}

// SetByName returns a family of symbols by its short name: "IEC" or "IEEE";
// anything else gives IEC.
func SetByName(name string) *Set {
	if name == "IEEE" {
		return IEEE()
	}
	return IEC()
}

// IEC returns the symbols after IEC 60617.
func IEC() *Set { return iecSet }

var iecSet = newIEC()

// newIEC is the set after IEC 60617, shapes and proportions from memory where the
// standard's numbers are not at hand.
func newIEC() *Set {
	s := &Set{name: "IEC 60617", byKind: map[Kind]*Symbol{}}
	for _, sym := range slices.Concat([]*Symbol{
		battery(), bank(), batteryString(), bankString(), generator(), alternator(converts), vehicleLoads(), tap(),
		fuse(), breaker(), ptc(), spareWay(),
		coil(), makeContact(), changeover(), contactor(), contactorChangeover(), resistor(), diode(), feedDiode(), zener(),
		manualSwitch(), pushSwitch(), floatSwitch(), pressureSwitch(), positionContact(), batterySwitch(),
		lamp(), led(), heater(), motor(), pump(), horn(), socket(), electronics(), sensor(), voltmeter(), converter(), solar(), rectifier(),
		plug(), plugBack(),
		frameGround(), groundBar(), negative(),
		junction(), splice(), incoming(), outgoing(),
	}, stayingCoils()) {
		s.order = append(s.order, sym.Kind)
		s.byKind[sym.Kind] = sym
	}
	return s
}
