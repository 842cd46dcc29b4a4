package library

import "math"

// Terminal finds a terminal by name or alias; nil when there is none.
func (l *Library) Terminal(name string) *Terminal { return find(l.Terminals, name, terminalNames) }

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

// ContactUnsourced tells whether the contact's resistance has no source: the library's
// are common practice, whatever the row's current rests on; a user's own are not.
func (t *Terminal) ContactUnsourced() bool { return t.Source.Certainty != UserData }

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

// Share is the share of its ratings that the family keeps at an ambient in °C: contacts
// get hotter with the square of the current, so that above max C − rise K it is
// √((max C − ambient) / rise K), 0 from max C on.
func (c *Connector) Share(ambientC float64) float64 {
	if c.MaxC == 0 || c.RiseK == 0 {
		return 1
	}
	return math.Sqrt(min(1, max(0, (c.MaxC-ambientC)/c.RiseK)))
}

func connectorNames(c *Connector) (string, []string) { return c.Name, c.Aliases }

func (t *Terminal) check(m *row) {
	m.barrel(t.MinMm2, t.MaxMm2)
	if t.AgedOhm < t.ContactOhm {
		m.r.report(m.node, "\"aged mohm\" is below \"new mohm\"", "", "")
	}
}

func (c *Connector) check(m *row) {
	m.r.ascending(m.node, "ways", len(c.Ways), func(i int) float64 { return float64(c.Ways[i]) })
	m.barrel(c.MinMm2, c.MaxMm2)
}

// barrel reports a range of areas that is upside down.
func (m *row) barrel(lo, hi float64) {
	if lo > hi && hi != 0 {
		m.r.report(m.node, "\"min mm2\" is above \"max mm2\"", "", "")
	}
}
