package library

// Cover finds a sleeve or conduit by name or alias; nil when there is none.
func (l *Library) Cover(name string) *Cover { return find(l.Covers, name, coverNames) }

// CoverNames lists the covers in file order.
func (l *Library) CoverNames() []string { return namesOf(l.Covers, coverNames) }

func coverNames(c *Cover) (string, []string) { return c.Name, c.Aliases }

func readCover(m *row, s Source) {
	c := &Cover{
		Name:          m.needText("name"),
		Aliases:       m.texts("aliases"),
		Kind:          m.choice("kind", "sleeve", "conduit", "loom tape"),
		MaxC:          m.needNumber("max C", 40, 1200),
		Abrasion:      m.yes("abrasion"),
		Pinch:         m.yes("pinch"),
		Heat:          m.yes("heat"),
		Stiff:         m.yes("stiff"),
		CurrentFactor: m.needNumber("current factor", 0.1, 1),
		Source:        s,
	}
	m.r.sourced(m.node, s)
	m.r.lib.Covers = add(m, "covers", m.r.lib.Covers, c, c.Name, c.Aliases)
}
