package library

// Practice finds a field of use by name or alias; nil when there is none.
func (l *Library) Practice(name string) *Practice { return find(l.Practices, name, practiceNames) }

// PracticeNames lists the practices in file order.
func (l *Library) PracticeNames() []string { return namesOf(l.Practices, practiceNames) }

func practiceNames(p *Practice) (string, []string) { return p.Name, nil }

// readPractice reads the limits of a practice, each a mapping of value and
// source, since they come from different documents.
func readPractice(m *row, s Source) {
	p := &Practice{Name: m.needText("name"), Afloat: m.needYes("afloat"), UsualWire: m.text("usual wire"),
		Source: map[string]Source{}}
	if p.UsualWire != "" && m.r.lib.WireType(p.UsualWire) == nil {
		m.r.reportUnknown(m.values["usual wire"], "wire type", p.UsualWire, m.r.lib.WireTypeNames())
	}
	z := &row{r: m.r, node: m.node}
	if v := m.get("limits"); v == nil {
		m.missing("limits")
	} else if sub, ok := m.r.newRow(v, "\"limits\""); ok {
		z = sub
	}
	number := func(key string, lo, hi float64) float64 { return z.limit(key, p, s, lo, hi) }
	p.DropCritical = number("drop critical", 0.001, 0.5)
	p.DropOther = number("drop other", 0.001, 0.5)
	p.DropAim = number("drop aim", 0.001, 0.5)
	p.FuseDistanceM = number("fuse distance mm", 1, 5000) / 1e3
	p.FuseDistanceSheathedM = number("fuse distance sheathed mm", 1, 5000) / 1e3
	p.FuseLoadShare = number("load share of fuse", 0.1, 1)
	p.FuseWireShare = number("fuse share of wire", 0.1, 2)
	p.MostFuseWireShare = number("most fuse share of wire", 1, 3)
	p.FuseRatio = number("fuse ratio", 1, 10)
	p.MinMm2 = number("least mm2", 0.05, 10)
	p.MinFlexMm2 = number("least flexing mm2", 0.05, 10)
	p.HotSpotMarginC = number("margin to class K", 0, 100)
	p.Ampacity = z.limitText("current table", p, s)
	z.finish()
	m.r.lib.Practices = add(m, "practices", m.r.lib.Practices, p, p.Name, nil)
}

// limit reads {value, source, certainty} of a practice.
func (m *row) limit(key string, p *Practice, around Source, lo, hi float64) float64 {
	z := m.limitRow(key, p, around)
	if z == nil {
		return 0
	}
	defer z.finish()
	return z.needNumber("value", lo, hi)
}

// limitText is limit for a word.
func (m *row) limitText(key string, p *Practice, around Source) string {
	z := m.limitRow(key, p, around)
	if z == nil {
		return ""
	}
	defer z.finish()
	return z.needText("value")
}

func (m *row) limitRow(key string, p *Practice, around Source) *row {
	v := m.get(key)
	if v == nil {
		m.missing(key)
		return nil
	}
	z, ok := m.r.newRow(v, "\""+key+"\"")
	if !ok {
		return nil
	}
	s := m.r.source(z, around)
	m.r.sourced(v, s)
	p.Source[key] = s
	return z
}
