package bench

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
)

// polarised tells whether a load suffers from swapped wires: the design says so,
// or it is of a kind that does (common practice, no source).
func polarised(l *design.Load) bool {
	return l.Polarised || l.Behaves == design.ConstantPower || l.Sign == design.SignLED || l.Sign.Electronic()
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
	g, plugs := &Group{}, &Group{Title: "At the plugs, before the accessories are mated"}
	read := map[*circuit.Part]bool{}
	for _, p := range m.c.Parts {
		switch src := p.Source.(type) {
		case *design.Load:
			if p.Plug != nil {
				plugs.Checks = append(plugs.Checks, m.backFrom(p, p.Terminal("-"), p.Terminal("+"), read))
			} else if polarised(src) {
				g.Checks = append(g.Checks, m.backFrom(p, p.Terminal("-"), p.Terminal("+"), read))
			}
		case *design.Relay:
			if k := m.suppression(p); k == "diode" || k == "zener" {
				check := m.backFrom(p, p.Terminal("85"), p.Terminal("86"), read)
				check.Where += "; cathode (ring) of the " + k + " on 86"
				g.Checks = append(g.Checks, check)
			}
		}
	}
	setup := []string{"Battery off, loads unplugged. Where a figure stands, the return side must read low to battery negative, the feed side must " +
		"not: once through each ground point. Of all others, whose wires have been read from contact to contact, the colours are compared by eye."}
	var groups []*Group
	if len(g.Checks) > 0 {
		groups = append(groups, g)
	}
	if len(plugs.Checks) > 0 {
		g.Title = "At the parts"
		groups = append(groups, plugs)
		setup = append(setup, "At the plugs: on the contacts of the harness half; the feeds have been read through. Then hold the two halves face to face: the + lead of the "+
			"accessory must meet the feed, the − lead the return.")
	}
	if len(groups) == 0 {
		return nil
	}
	return []*Section{{Kind: Polarity, Title: "Before power: polarity", Groups: groups, Setup: setup}}
}

// ByEye is the text of a check that is not read.
const ByEye = "by eye"

// backFrom is the check of a return terminal against battery negative: a reading for the
// first through its ground point and where something stands in the return, a look else.
func (m *maker) backFrom(p *circuit.Part, minus, plus *circuit.Terminal, read map[*circuit.Part]bool) *Check {
	check := &Check{Ref: p.Ref, Name: p.Name, Where: "− " + wiresAt(minus) + ", + " + wiresAt(plus),
		Quantity: quantity.Resistance, Nominal: nan(), Low: nan(), High: nan(), Basis: basisReturn}
	way := m.c.MainReturn(minus.Node, m.c.Negative())
	if !way.Whole {
		check.Text = "no way back in the design"
		return check
	}
	if slices.ContainsFunc(p.Branches, (*circuit.Branch).FlowsOn) { // to a load that is unplugged too
		check.Text = ByEye
		return check
	}
	if point := groundPoint(minus); point != nil && read[point] && !slices.ContainsFunc(way.Branches, inReturn) {
		check.Text = ByEye
		return check
	} else if point != nil {
		read[point] = true
	}
	nominal, high := 0.0, 0.0
	var joined []string
	for _, b := range way.Branches {
		nominal += b.Ohm
		if inReturn(b) {
			joined = append(joined, joinedBy(b))
		}
		if w := b.Wire; w != nil {
			high += highOhm(w)
		} else {
			high += ContactHigh * b.Ohm
		}
	}
	if len(joined) > 0 {
		check.Where += "; " + wording.And(joined)
	}
	check.Nominal = nominal
	_, check.High = widen(0, high, OhmShare, OhmFixed)
	check.Probe = &Probe{Return: way.Branches}
	return check
}

func inReturn(b *circuit.Branch) bool { return b.Part != nil && b.Part.InReturn }

// groundPoint is the part to which the only wire of a return terminal leads; nil where there
// are more.
func groundPoint(minus *circuit.Terminal) *circuit.Part {
	if len(minus.Wires) != 1 {
		return nil
	}
	w := minus.Wires[0]
	if w.To == minus {
		return w.From.Part
	}
	return w.To.Part
}

// joinedBy says how what stands in a return lets a reading through with the power off.
func joinedBy(b *circuit.Branch) string {
	switch b.Part.Kind {
	case circuit.Fuse:
		return b.Part.Ref + " in its holder"
	case circuit.Switch:
		if s := b.Part.Source.(*design.Switch); s.Positions != nil {
			at := slices.IndexFunc(s.Positions, func(at *design.Position) bool { return s.Gives(at.Name, b.Closer.Output) })
			return b.Part.Ref + " at " + s.Positions[at].Name
		}
		return b.Part.Ref + " held on"
	}
	return b.Part.Ref + " " + b.A.Terminals[0].Name + " to " + b.B.Terminals[0].Name + " bridged in its socket"
}

// wiresAt names the wires at a terminal: "W12 GN".
func wiresAt(t *circuit.Terminal) string {
	var names []string
	for _, w := range t.Wires {
		name := w.End(w.From == t).Number
		if code := w.Spec.Colour.Code(); code != "" {
			name += " " + code
		}
		names = append(names, name)
	}
	return wording.And(names)
}
