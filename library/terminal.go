package library

// Terminal finds a terminal by name or alias; nil when there is none.
func (l *Library) Terminal(name string) *Terminal { return find(l.Terminals, name, terminalNames) }

// TerminalNames lists the terminals in file order.
func (l *Library) TerminalNames() []string { return namesOf(l.Terminals, terminalNames) }

func terminalNames(t *Terminal) (string, []string) { return t.Name, t.Aliases }

// TerminalFor is the first terminal in file order of a kind ("ring M6",
// "tab 6.3") whose barrel takes a conductor of the area in mm²; nil when none
// does.
func (l *Library) TerminalFor(kind string, areaMm2 float64) *Terminal {
	for _, t := range l.Terminals {
		if t.Kind == kind && t.MinMm2 <= areaMm2 && areaMm2 <= t.MaxMm2 {
			return t
		}
	}
	return nil
}

// TerminalKinds lists the kinds of terminals, each once, in file order.
func (l *Library) TerminalKinds() []string {
	seen := map[string]bool{}
	var out []string
	for _, t := range l.Terminals {
		if !seen[t.Kind] {
			seen[t.Kind] = true
			out = append(out, t.Kind)
		}
	}
	return out
}

// Connector finds a connector family by name or alias; nil when there is none.
func (l *Library) Connector(name string) *Connector {
	return find(l.Connectors, name, connectorNames)
}

// ConnectorNames lists the connector families in file order.
func (l *Library) ConnectorNames() []string { return namesOf(l.Connectors, connectorNames) }

// Housing is the fewest ways of the family's housings that hold so many wires;
// 0 when none does.
func (c *Connector) Housing(wires int) int {
	for _, n := range c.Ways {
		if n >= wires {
			return n
		}
	}
	return 0
}

func connectorNames(c *Connector) (string, []string) { return c.Name, c.Aliases }

func readTerminal(m *row, s Source) {
	t := &Terminal{
		Name:       m.needText("name"),
		Aliases:    m.texts("aliases"),
		Kind:       m.needText("kind"),
		MinMm2:     m.needNumber("min mm2", 0.01, 1000),
		MaxMm2:     m.needNumber("max mm2", 0.01, 1000),
		MaxA:       m.needNumber("max A", 0.1, 5000),
		StripMm:    m.needNumber("strip mm", 1, 100),
		ContactOhm: m.needNumber("new mohm", 0.001, 1000) / 1e3,
		AgedOhm:    m.needNumber("aged mohm", 0.001, 1000) / 1e3,
		Sealed:     m.yes("sealed"),
		SoldPer:    int(m.needNumber("sold per", 1, 100000)),
		Source:     s,
	}
	m.r.sourced(m.node, s)
	m.barrel(t.MinMm2, t.MaxMm2)
	if t.AgedOhm < t.ContactOhm {
		m.r.report(m.node, "\"aged mohm\" is below \"new mohm\"", "", "")
	}
	m.r.lib.Terminals = add(m, "terminals", m.r.lib.Terminals, t, t.Name, t.Aliases)
}

func readConnector(m *row, s Source) {
	c := &Connector{
		Name:       m.needText("name"),
		Aliases:    m.texts("aliases"),
		MinMm2:     m.needNumber("min mm2", 0.01, 1000),
		MaxMm2:     m.needNumber("max mm2", 0.01, 1000),
		MaxA:       m.needNumber("max A", 0.1, 5000),
		ContactOhm: m.needNumber("contact mohm", 0.001, 1000) / 1e3,
		Sealed:     m.yes("sealed"),
		PinKind:    m.needText("pin kind"),
		Source:     s,
	}
	if m.has("seals per") {
		c.SealsPer = int(m.number("seals per", 1, 100000))
	}
	if len(m.list("ways")) == 0 {
		m.missing("ways")
	}
	for _, n := range m.list("ways") {
		c.Ways = append(c.Ways, int(m.r.number(n, "ways", 1, 1000)))
	}
	m.r.ascending(m.node, "ways", len(c.Ways), func(i int) float64 { return float64(c.Ways[i]) })
	m.r.sourced(m.node, s)
	m.barrel(c.MinMm2, c.MaxMm2)
	m.r.lib.Connectors = add(m, "connector families", m.r.lib.Connectors, c, c.Name, c.Aliases)
}

// barrel reports a range of areas that is upside down.
func (m *row) barrel(lo, hi float64) {
	if lo > hi && hi != 0 {
		m.r.report(m.node, "\"min mm2\" is above \"max mm2\"", "", "")
	}
}
