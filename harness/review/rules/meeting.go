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
	for _, n := range f.c.Nodes {
		g := &f.guards[n.Index]
		fuses, bare := f.nearest.Above(n)
		if bare || !g.known() {
			continue
		}
		ways := [][]*circuit.Branch{fuses}
		if len(fuses) > 1 && !f.apart().None() {
			ways = f.fusesClosed(n)
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

// fusesClosed are the fuses nearest above a node, for each way in which the contacts between can be closed together.
func (f *facts) fusesClosed(n *circuit.Node) (ways [][]*circuit.Branch) {
	fuses, contacts := f.fusesNearest(n, func(*circuit.Branch) bool { return true })
	if len(contacts) == 0 {
		return [][]*circuit.Branch{fuses}
	}
	for _, closed := range f.apart().Closed(contacts) {
		fuses, _ := f.fusesNearest(n, closed)
		if !slices.ContainsFunc(ways, func(way []*circuit.Branch) bool { return slices.Equal(way, fuses) }) {
			ways = append(ways, fuses)
		}
	}
	return ways
}

// fusesNearest are the fuses nearest above a node over closed contacts, and these contacts.
func (f *facts) fusesNearest(n *circuit.Node, closed func(*circuit.Branch) bool) (fuses, contacts []*circuit.Branch) {
	f.markNumber++
	f.mark[n.Index] = f.markNumber
	for queue := []*circuit.Node{n}; len(queue) > 0; {
		n := queue[0]
		queue = queue[1:]
		for _, b := range n.Branches {
			if b.B != n || !b.Feeds() || !closed(b) {
				continue
			}
			if b.Kind == circuit.FuseBranch {
				fuses = append(fuses, b)
				continue
			}
			if b.Closer != nil {
				contacts = append(contacts, b)
			}
			if f.mark[b.A.Index] != f.markNumber {
				f.mark[b.A.Index] = f.markNumber
				queue = append(queue, b.A)
			}
		}
	}
	return fuses, contacts
}

// apart is what contacts keep from being on or closed at once.
func (f *facts) apart() *circuit.Exclusive {
	if f.exclusive == nil {
		f.exclusive = f.c.Exclusive()
	}
	return f.exclusive
}
