package bench

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// ring reads behind each fuse of a ring while it is out, in the first pass in which the other way keeps that
// live: with all of them in, a leg that is open would not show.
func (m *maker) ring(all []*solved) {
	rings := m.c.Rings()
	done := map[*circuit.Branch]bool{}
	for _, s := range all {
		if rings == nil || !s.ok() {
			continue
		}
		g := &Group{Title: "One fuse of the ring out at a time, and in again before the next: behind it stays live, given as volts below the battery's"}
		for _, b := range m.c.Branches {
			if b.Kind != circuit.FuseBranch || b.Fuse.Factory || !rings.In(b) || done[b] {
				continue
			}
			m.out = b
			without := m.pass(s.situation)
			m.out = nil
			_, minus := m.c.Supply(b.B)
			if !without.ok() {
				continue
			}
			if c := m.below(without, b.B, minus); c.Below {
				c.Ref, c.Name, c.Where = b.Fuse.Ref, b.Part.Name, "load side of its holder and battery −, "+b.Fuse.Ref+" out"
				g.Checks = append(g.Checks, c)
				done[b] = true
			}
		}
		if len(g.Checks) > 0 {
			s.section.Groups = append(s.section.Groups, g)
		}
	}
}

// pulled takes a fuse out.
func (m *maker) pulled(opt *solve.Options) {
	if m.out != nil {
		opt.Changes = append(slices.Clip(opt.Changes), solve.OpenBranch(m.out))
	}
}
