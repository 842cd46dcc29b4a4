package bench

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
)

// alone reads each load that several switches feed on each of its ways in, in the first
// pass that has it on: with all of them closed, one that is dead would not show. So in each
// position of a switch that no pass has it in, where a resistor holds it back in one.
func (m *maker) alone(all []*solved) {
	done := map[*circuit.Part]bool{}
	for _, s := range all {
		if !s.ok() {
			continue
		}
		g := &Group{Title: "Each feed alone, the other switches open, given as volts below the battery's"}
		turned := &Group{Title: "In other positions of a switch, given as volts below the battery's"}
		for _, l := range s.situation.On {
			p := m.c.PartOf(l)
			if p == nil || done[p] {
				continue
			}
			done[p] = true
			g.Checks = append(g.Checks, m.ways(s, p)...)
			turned.Checks = append(turned.Checks, m.turned(all, s, l, p)...)
		}
		for _, g := range []*Group{g, turned} {
			if len(g.Checks) > 0 {
				s.section.Groups = append(s.section.Groups, g)
			}
		}
	}
}

// ways are the readings of a load on each way in alone; none where it has only one, or
// where a way carries nothing in this pass.
func (m *maker) ways(s *solved, p *circuit.Part) (checks []*Check) {
	sets := m.c.FeedSwitches(p)
	if len(sets) < 2 {
		return nil
	}
	for _, set := range sets {
		if c := m.point(m.pass(circuit.Only(s.situation, sets, set)), p); c != nil && c.Below {
			c.Where += ", only " + m.refs(set) + " closed"
			checks = append(checks, c)
		}
	}
	return checks
}

// turned are the readings of a load in the positions of a switch that no pass has it in.
func (m *maker) turned(all []*solved, s *solved, l *design.Load, p *circuit.Part) (checks []*Check) {
	for _, b := range p.Branches {
		if b.Load == nil || b.Load.Standby {
			continue
		}
		for _, still := range m.c.OtherPositions(s.situation, l, b) {
			to := m.pass(still)
			if !to.ok() || slices.ContainsFunc(all, func(o *solved) bool {
				return o.ok() && slices.Contains(o.situation.On, l) && m.turnedTo(o, p) == m.turnedTo(to, p)
			}) {
				continue
			}
			if c := m.point(to, p); c != nil && c.Below {
				set := still.Set[len(still.Set)-1]
				c.Where += ", " + m.refs([]*design.Switch{set.Switch}) + " at " + set.Position
				checks = append(checks, c)
			}
		}
	}
	return checks
}

// refs names switches as on the schematic.
func (m *maker) refs(set []*design.Switch) string {
	var out []string
	for _, p := range m.c.Parts {
		if x, ok := p.Source.(*design.Switch); ok && slices.Contains(set, x) {
			out = append(out, p.Ref)
		}
	}
	return wording.And(out)
}
