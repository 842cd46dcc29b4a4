package library

// Tolerance is how far one figure of a design may be off in use.
type Tolerance struct {
	Name string
	// Unit is "V" (of a 12 V class system), "share" (of 1), "K" or "times".
	Unit   string
	Value  float64
	Source Source
}

// Tolerance finds a tolerance by name; nil when there is none.
func (l *Library) Tolerance(name string) *Tolerance {
	return find(l.Tolerances, name, toleranceNames)
}

// ToleranceNames lists the tolerances in file order.
func (l *Library) ToleranceNames() []string { return namesOf(l.Tolerances, toleranceNames) }

func toleranceNames(t *Tolerance) (string, []string) { return t.Name, nil }

func readTolerance(m *row, s Source) {
	t := &Tolerance{
		Name:   m.needText("name"),
		Unit:   m.choice("unit", "share", "V", "K", "times"),
		Value:  m.needNumber("value", 0, 1000),
		Source: s,
	}
	m.r.sourced(m.node, s)
	m.r.lib.Tolerances = add(m, "tolerances", m.r.lib.Tolerances, t, t.Name, nil)
}
