package library

// Load finds a typical load by name or alias; nil when there is none.
func (l *Library) Load(name string) *LoadType { return find(l.Loads, name, loadNames) }

func loadNames(t *LoadType) (string, []string) { return t.Name, t.Aliases }

func (t *LoadType) check(m *row) {
	if (t.PowerW > 0) == (t.CurrentA > 0) {
		m.r.report(m.node, "give either \"power W\" or \"current A\"", "one of the two", "")
	}
	t.Inrush = Inrush{PeakRatio: 1, Source: t.Source}
	v := m.get("inrush")
	if v == nil {
		return
	}
	if z, ok := m.r.newRow(v, "\"inrush\""); ok { // its source may differ from the load's
		z.fill(&t.Inrush, m.r.source(z, t.Source))
		m.r.sourced(z.node, t.Inrush.Source)
		z.finish()
	}
}
