package library

// Load finds a typical load by name or alias; nil when there is none.
func (l *Library) Load(name string) *LoadType { return find(l.Loads, name, loadNames) }

// LoadNames lists the typical loads in file order.
func (l *Library) LoadNames() []string { return namesOf(l.Loads, loadNames) }

func loadNames(t *LoadType) (string, []string) { return t.Name, t.Aliases }

func readLoad(m *row, s Source) {
	t := &LoadType{
		Name:    m.needText("name"),
		Aliases: m.texts("aliases"),
		Behaves: m.choice("behaves", "resistor", "filament lamp", "constant power", "motor"),
		Sign: m.choice("sign", "", "lamp", "LED", "heater", "motor", "pump", "horn", "socket",
			"electronics", "sensor"),
		PowerW:   m.number("power W", 0.001, 1e5),
		CurrentA: m.number("current A", 0.001, 1e4),
		RatedV:   m.needNumber("rated V", 1, 120),
		MinV:     m.number("min V", 0.5, 120),
		Bilge:    m.yes("bilge pump"),
		Duty:     1,
		End:      m.text("end"),
		StandbyA: m.number("standby mA", 0, 1e4) / 1e3,
		Inrush:   Inrush{PeakRatio: 1, Source: s},
		Source:   s,
	}
	m.r.sourced(m.node, s)
	if !m.has("behaves") {
		m.missing("behaves")
	}
	if m.has("duty") {
		t.Duty = m.number("duty", 0, 1)
	} else {
		m.get("duty")
	}
	if (t.PowerW > 0) == (t.CurrentA > 0) {
		m.r.report(m.node, "give either \"power W\" or \"current A\"", "one of the two", "")
	}
	if v := m.get("inrush"); v != nil {
		t.Inrush = m.r.inrush(m, s)
	}
	m.r.lib.Loads = add(m, "loads", m.r.lib.Loads, t, t.Name, t.Aliases)
}

// inrush reads a starting current; its source may differ from the load's.
func (r *reader) inrush(m *row, around Source) Inrush {
	z, ok := r.newRow(m.values["inrush"], "\"inrush\"")
	if !ok {
		return Inrush{PeakRatio: 1, Source: around}
	}
	i := Inrush{
		PeakRatio: z.needNumber("peak ratio", 1, 200),
		TauS:      z.needNumber("tau s", 1e-6, 1e4),
		Source:    r.source(z, around),
	}
	r.sourced(z.node, i.Source)
	z.finish()
	return i
}
