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
		PowerW:    m.number("power W", 0.001, 1e5),
		CurrentA:  m.number("current A", 0.001, 1e4),
		RatedV:    m.needNumber("rated V", 1, 120),
		MinV:      m.number("min V", 0.5, 120),
		Bilge:     m.yes("bilge pump"),
		Duty:      1,
		End:       m.text("end"),
		StandbyA:  m.number("standby mA", 0, 1e4) / 1e3,
		Highest:   m.choice("figure", "typical", "highest") == "highest",
		Most:      MostPower{Source: s},
		OnForS:    m.number("on for s", 0.1, 1e5),
		EveryS:    m.number("every s", 0.1, 1e6),
		MostFuseA: m.number("most fuse A", 0.1, 2000),
		Inrush:    Inrush{PeakRatio: 1, Source: s},
		Source:    s,
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
	m.part("inrush", s, func(z *row, s Source) {
		t.Inrush = Inrush{PeakRatio: z.needNumber("peak ratio", 1, 200), TauS: z.needNumber("tau s", 1e-6, 1e4), Source: s}
	})
	if (t.OnForS > 0) != (t.EveryS > 0) || t.OnForS > t.EveryS {
		m.r.report(m.node, "\"on for s\" and \"every s\" go together, the first not above the second", "", "")
	}
	m.part("highest", s, func(z *row, s Source) {
		t.Most = MostPower{z.needNumber("power W", 0.001, 1e5), s}
	})
	m.part("lead", s, func(z *row, _ Source) {
		t.LeadMm2, t.LeadM = z.needNumber("mm2", 0.05, 200), z.number("length m", 0.01, 20)
	})
	m.r.lib.Loads = add(m, "loads", m.r.lib.Loads, t, t.Name, t.Aliases)
}

// part reads a mapping inside a row, which may have a source of its own.
func (m *row) part(key string, around Source, read func(*row, Source)) {
	v := m.get(key)
	if v == nil {
		return
	}
	z, ok := m.r.newRow(v, "\""+key+"\"")
	if !ok {
		return
	}
	s := m.r.source(z, around)
	m.r.sourced(z.node, s)
	read(z, s)
	z.finish()
}
