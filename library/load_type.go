package library

// Load finds a typical load by name or alias; nil when there is none.
func (l *Library) Load(name string) *LoadType { return find(l.Loads, name, loadNames) }

func loadNames(t *LoadType) (string, []string) { return t.Name, t.Aliases }

func (t *LoadType) check(m *row) {
	if (t.PowerW > 0) == (t.CurrentA > 0) {
		m.r.report(m.node, "give either \"power W\" or \"current A\"", "one of the two", "")
	}
	if (t.OnForS > 0) != (t.EveryS > 0) || t.OnForS > t.EveryS {
		m.r.report(m.node, "\"on for s\" and \"every s\" go together, the first not above the second", "", "")
	}
	if m.has("least wire") && (t.Wire.Mm2 > 0) == (t.Wire.PerA > 0) {
		m.r.report(m.node, "give the least wire in \"mm2\" or in \"mm2 per A\"", "one of the two", "")
	}
	if n := len(t.Turns); n != 0 && n != 2 {
		m.r.report(m.node, "\"turns\" are the names of two directions", "two", "")
	}
	t.Highest = m.choice("figure", "typical", "highest") == "highest"
	if !m.has("inrush") {
		t.Inrush.PeakRatio = 1
	}
}
