package symbol

// iec is the set after IEC 60617, shapes and proportions from memory where the
// standard's numbers are not at hand.
type iec struct {
	order  []Kind
	byKind map[Kind]*Symbol
}

// IEC returns the symbols after IEC 60617.
func IEC() Set { return iecSet }

var iecSet = newIEC()

func newIEC() *iec {
	s := &iec{byKind: map[Kind]*Symbol{}}
	for _, sym := range []*Symbol{
		battery(), generator(), vehicleLoads(), tap(),
		fuse(), breaker(), ptc(), spareWay(),
		coil(), makeContact(), changeover(), resistor(), diode(), zener(),
		manualSwitch(), pushSwitch(),
		lamp(), led(), heater(), motor(), pump(), horn(), socket(), electronics(), sensor(),
		frameGround(), groundBar(), negative(),
		junction(), splice(), incoming(), outgoing(),
	} {
		s.order = append(s.order, sym.Kind)
		s.byKind[sym.Kind] = sym
	}
	return s
}

// Name says which standard the shapes follow.
func (s *iec) Name() string { return "IEC 60617" }

// Kinds lists the catalogue.
func (s *iec) Kinds() []Kind { return s.order }

// Symbol returns the shape of a kind; an unknown kind gets the electronic unit's box.
func (s *iec) Symbol(k Kind) *Symbol {
	if sym := s.byKind[k]; sym != nil {
		return sym
	}
	return s.byKind[Electronics]
}
