package bench

import (
	"fusewright/harness/circuit"
	"fusewright/harness/conductor"
	"fusewright/harness/design"
	"fusewright/harness/quantity"
)

// polarised tells whether a load suffers from swapped wires: the design says so,
// or it is of a kind that does (common practice, no source).
func polarised(l *design.Load) bool {
	return l.Polarised || l.Behaves == design.ConstantPower || l.Sign == design.SignLED || l.Sign == design.SignElectronics
}

// suppression is what lies across a relay's coil; "" = not said.
func (m *maker) suppression(p *circuit.Part) string {
	if r, ok := p.Source.(*design.Relay); ok {
		return r.Coil.Suppressed
	}
	return ""
}

// polarity checks the return side of loads and coils that must not be swapped.
func (m *maker) polarity() []*Section {
	g := &Group{}
	for _, p := range m.c.Parts {
		switch src := p.Source.(type) {
		case *design.Load:
			if polarised(src) {
				g.Checks = append(g.Checks, m.backFrom(p, p.Terminal("-"), p.Terminal("+")))
			}
		case *design.Relay:
			if k := m.suppression(p); k == "diode" || k == "zener" {
				check := m.backFrom(p, p.Terminal("85"), p.Terminal("86"))
				check.Where += "; cathode (ring) of the " + k + " on 86"
				g.Checks = append(g.Checks, check)
			}
		}
	}
	if len(g.Checks) == 0 {
		return nil
	}
	return []*Section{{Kind: Polarity, Title: "Before power: polarity", Groups: []*Group{g},
		Setup: []string{"Fuses out again or battery off, loads unplugged. The return side must read low to battery negative, the feed " +
			"side must not. Then compare the wire colours."}}}
}

// backFrom is the check of a return terminal against battery negative.
func (m *maker) backFrom(p *circuit.Part, minus, plus *circuit.Terminal) *Check {
	check := &Check{Ref: p.Ref, Name: p.Name, Where: "− " + wiresAt(minus) + ", + " + wiresAt(plus),
		Quantity: quantity.Resistance, Nominal: nan(), Low: nan(), High: nan(), Basis: basisReturn}
	way := m.c.MainReturn(minus.Node)
	if !way.Whole {
		check.Text = "no way back in the design"
		return check
	}
	nominal, high := 0.0, 0.0
	for _, b := range way.Branches {
		nominal += b.Ohm
		if w := b.Wire; w != nil {
			high += conductor.AtTemperature(w.ConductorOhm20, benchHighC) + agedOhm(w.FromEnd) + agedOhm(w.ToEnd)
		} else {
			high += ContactHigh * b.Ohm
		}
	}
	check.Nominal = nominal
	_, check.High = widen(0, high, OhmShare, OhmFixed)
	return check
}

// wiresAt names the wires at a terminal: "W12 GN".
func wiresAt(t *circuit.Terminal) string {
	var names []string
	for _, w := range t.Wires {
		name := w.Number
		if code := w.Spec.Colour.Code(); code != "" {
			name += " " + code
		}
		names = append(names, name)
	}
	return join(names)
}
