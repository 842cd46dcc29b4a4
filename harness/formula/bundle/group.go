package bundle

import "slices"

// group is a core by its wires, in the steady state with everything on.
type group struct {
	members []int
	core
}

// groups are the wires to follow wire i among, since it is not known beforehand
// which make it hottest: at first the hottest core with everything on, the hottest
// in the mean of the cycles, and the wire alone, few in number; then all other
// cores that are hottest at some time.
func (b *Bundle) groups(i int, mean *Bundle) (all []group, few int) {
	all = b.group(all, b.first(b.full().n))
	all = b.group(all, mean.first(mean.hottest(1).n))
	all = b.group(all, []int{i})
	few = len(all)
	for _, order := range []*Bundle{b, mean} {
		for n := range order.strands {
			all = b.group(all, order.first(n+1))
		}
	}
	return all, few
}

// group adds one that is not there yet and carries current.
func (b *Bundle) group(all []group, members []int) []group {
	if slices.ContainsFunc(all, func(g group) bool { return slices.Equal(g.members, members) }) {
		return all
	}
	g := group{members: members}
	for _, s := range b.strands {
		if slices.Contains(members, s.wire) {
			g.add(s, 1)
		}
	}
	if g.n == 0 {
		return all
	}
	b.settle(&g.core)
	return append(all, g)
}

// first are the wires of the first strands, ascending.
func (b *Bundle) first(n int) []int {
	m := make([]int, n)
	for k := range m {
		m[k] = b.strands[k].wire
	}
	slices.Sort(m)
	return m
}
