package bench

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// ring reads behind each fuse of a ring while it is out, in the pass in which the other way loses most: with all of
// them in, a leg that is open would not show.
func (m *maker) ring(all []*solved) {
	rings := m.c.Rings()
	if rings == nil {
		return
	}
	groups := map[*solved]*Group{}
	for _, b := range m.c.Branches {
		if b.Kind != circuit.FuseBranch || b.Fuse.Factory || !rings.In(b) {
			continue
		}
		var most *Check
		var in *solved
		for _, s := range all {
			m.out = b
			if c := m.without(s, b); c != nil && (most == nil || c.Nominal > most.Nominal) {
				most, in = c, s
			}
			m.out = nil
		}
		if most == nil {
			continue
		}
		if groups[in] == nil {
			groups[in] = &Group{Title: "One fuse of the ring out at a time, and in again before the next: behind it stays live, given as volts below the battery's"}
			in.section.Groups = append(in.section.Groups, groups[in])
		}
		groups[in].Checks = append(groups[in].Checks, most)
	}
}

// without reads behind a fuse that is out; nil where that is dead.
func (m *maker) without(s *solved, b *circuit.Branch) *Check {
	if !s.ok() {
		return nil
	}
	out := m.pass(s.situation)
	if !out.ok() {
		return nil
	}
	_, minus := m.c.Supply(b.B)
	c := m.below(out, b.B, minus)
	if !c.Below {
		return nil
	}
	c.Ref, c.Name, c.Where = b.Fuse.Ref, b.Part.Name, "load side of its holder and battery −, "+b.Fuse.Ref+" out"
	return c
}

// pulled takes a fuse out.
func (m *maker) pulled(opt *solve.Options) {
	if m.out != nil {
		opt.Changes = append(slices.Clip(opt.Changes), solve.OpenBranch(m.out))
	}
}
