package rules

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
)

// meetings works out what feeds that meet let through together: fuses side by side
// open only when each carries more than its own rating.
type meetings struct {
	f    *facts
	lets map[*circuit.Branch]float64 // what a fuse lets through for good, with those above it
}

// joinGuards raises the guard of every node below a meeting of fused feeds to what
// they let through together.
func (f *facts) joinGuards() {
	m := &meetings{f, map[*circuit.Branch]float64{}}
	changes := slices.ContainsFunc(f.c.Branches, func(b *circuit.Branch) bool { return b.Closer != nil && b.Closer.Break != nil })
	for _, n := range f.c.Nodes {
		g := &f.guards[n.Index]
		fuses, bare := f.nearest.Above(n)
		if bare || !g.known() {
			continue
		}
		ways := [][]*circuit.Branch{fuses}
		if changes && len(fuses) > 1 {
			ways = [][]*circuit.Branch{f.fusesClosed(n, false), f.fusesClosed(n, true)}
		}
		for _, way := range ways {
			if a, by := m.through(way, nil); a > g.A && !math.IsInf(a, 1) {
				g.A, g.fuses = a, by
			}
		}
	}
	for i := range f.guards { // of several the largest opens last
		for _, b := range f.guards[i].fuses {
			if g := &f.guards[i]; len(g.fuses) == 1 || (guard{A: fuseRating(b), fuse: b}).before(guard{A: fuseRating(g.fuse), fuse: g.fuse}) {
				g.fuse = b
			}
		}
	}
}

// through is what fuses side by side let through for good, and which bound it: they
// themselves, or those above all of them. Those below are not met again in a ring.
func (m *meetings) through(fuses, below []*circuit.Branch) (float64, []*circuit.Branch) {
	sum := 0.0
	below = slices.Concat(below, fuses)
	var up []*circuit.Branch
	bare := false
	for _, b := range fuses {
		sum += m.alone(b)
		above, open := m.f.nearest.Above(b.A)
		bare = bare || open
		for _, a := range above {
			if !slices.Contains(up, a) && !slices.Contains(below, a) {
				up = append(up, a)
			}
		}
	}
	if len(fuses) > 1 && !bare && len(up) > 0 {
		if a, by := m.through(up, below); a < sum {
			return a, by
		}
	}
	return sum, fuses
}

// alone is what one fuse lets through for good.
func (m *meetings) alone(b *circuit.Branch) float64 {
	if a, ok := m.lets[b]; ok {
		return a
	}
	m.lets[b] = fuseRating(b) // of fuses in a ring
	if above, bare := m.f.nearest.Above(b.A); !bare && len(above) > 0 {
		a, _ := m.through(above, nil)
		m.lets[b] = math.Min(fuseRating(b), a)
	}
	return m.lets[b]
}

// fusesClosed are the fuses nearest above a node with the relays all at rest or all
// energised.
func (f *facts) fusesClosed(n *circuit.Node, atRest bool) []*circuit.Branch {
	f.markNumber++
	f.mark[n.Index] = f.markNumber
	var fuses []*circuit.Branch
	for queue := []*circuit.Node{n}; len(queue) > 0; {
		n := queue[0]
		queue = queue[1:]
		for _, b := range n.Branches {
			switch {
			case b.B != n || !b.Feeds() || apart(b, atRest):
			case b.Kind == circuit.FuseBranch:
				fuses = append(fuses, b)
			case f.mark[b.A.Index] != f.markNumber:
				f.mark[b.A.Index] = f.markNumber
				queue = append(queue, b.A)
			}
		}
	}
	return fuses
}

// apart tells whether a contact is open with the relays all at rest or all energised.
func apart(b *circuit.Branch, atRest bool) bool {
	c := b.Closer
	return c != nil && (atRest && c.Coil != nil || !atRest && c.Break != nil)
}
