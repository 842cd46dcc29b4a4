package library

// ContactDrop is what a part of a kind loses at its rated current where neither
// the design nor its type gives a resistance.
type ContactDrop struct {
	Kind   string // "switch", "fuse", "block way"
	DropV  float64
	Source Source
}

// ContactDrop finds the drop of a kind of part; nil when there is none.
func (l *Library) ContactDrop(kind string) *ContactDrop {
	return find(l.ContactDrops, kind, dropNames)
}

func dropNames(d *ContactDrop) (string, []string) { return d.Kind, nil }

func readContactDrop(m *row, s Source) {
	d := &ContactDrop{Kind: m.needText("kind"), DropV: m.needNumber("mV", 0.1, 1000) / 1e3, Source: s}
	m.r.sourced(m.node, s)
	m.r.lib.ContactDrops = add(m, "contact drops", m.r.lib.ContactDrops, d, d.Kind, nil)
}
