package rules

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
)

// guardRings gives what stands in a ring, or hangs on one, what its fuses let through for good. A wire of the ring
// carries what comes from one end or from the other, never both at one place; what hangs on it, the sum.
func (f *facts) guardRings() {
	f.guardRing = map[*circuit.Branch]guard{}
	if f.rings == nil {
		return
	}
	ring := f.ringed()
	for _, b := range f.c.Branches {
		if !ring[b] {
			continue
		}
		own := circuit.Abreast([]*circuit.Branch{b})
		near, far := f.letThrough(b.A, own), f.letThrough(b.B, own)
		if far.before(near) && !f.c.IsPost(b.A) {
			near = far
		}
		if near.known() {
			f.guardRing[b] = near
		}
		for _, n := range []*circuit.Node{b.A, b.B} {
			if g := f.letThrough(n, nil); g.known() && !f.c.IsPost(n) {
				f.hangOn(n, g, ring)
			}
		}
	}
}

// hangOn raises the guard of a node and of what hangs on it, as far as its own fuses.
func (f *facts) hangOn(n *circuit.Node, g guard, ring map[*circuit.Branch]bool) {
	if !g.before(f.guards[n.Index]) {
		g = f.guards[n.Index]
	}
	f.guards[n.Index] = g
	for _, b := range n.FeedsOn() {
		if was, met := f.guardRing[b]; ring[b] || met && !g.before(was) {
			continue
		}
		f.guardRing[b] = g
		if b.Kind != circuit.FuseBranch && !f.c.IsPost(b.B) {
			f.hangOn(b.B, g, ring)
		}
	}
}

// ringed are the branches of rings that close while their contacts can be closed together.
func (f *facts) ringed() map[*circuit.Branch]bool {
	ring := map[*circuit.Branch]bool{}
	for t := range f.bypassed() {
		for _, b := range f.c.Above(t.Node) {
			ring[b] = ring[b] || f.rings.In(b) && !f.rings.Bare[b.Index]
		}
	}
	return ring
}

// letThrough is what the fuses on all ways to a node let through together for good, without some branches: the
// greatest flow, with the fuses that bound it; unknown where one way has none, or one of no known rating.
func (f *facts) letThrough(n *circuit.Node, without []*circuit.Branch) (most guard) {
	var contacts []*circuit.Branch
	for _, b := range f.c.Between(n) {
		if b.Closer != nil {
			contacts = append(contacts, b)
		}
	}
	for _, closed := range f.apart().Closed(contacts) {
		if g := f.greatestFlow(n, without, closed); g.before(most) {
			most = g
		}
	}
	return most
}

func (f *facts) greatestFlow(to *circuit.Node, without []*circuit.Branch, closed func(*circuit.Branch) bool) guard {
	flow, sum := map[*circuit.Branch]float64{}, 0.0
	spare := func(b *circuit.Branch, from *circuit.Node) float64 {
		if !b.Feeds() || !closed(b) || slices.Contains(without, b) {
			return 0
		}
		used := flow[b]
		if from == b.B {
			used = -used
		}
		most := math.Inf(1)
		if r := fuseRating(b); b.Kind == circuit.FuseBranch && r > 0 {
			most = r
		}
		if !b.Passes(from) {
			most = 0
		}
		return most - used
	}
	for {
		by, post := f.byWay(to, spare)
		if post == nil { // what reaches the node ends at the fuses that are full
			return f.full(by, spare, sum)
		}
		least := math.Inf(1)
		for n := post; n != to; n = other(by[n], n) {
			least = math.Min(least, spare(by[n], n))
		}
		if math.IsInf(least, 1) {
			return guard{A: least}
		}
		sum += least
		for n := post; n != to; n = other(by[n], n) {
			if b := by[n]; b.A == n {
				flow[b] += least
			} else {
				flow[b] -= least
			}
		}
	}
}

// byWay gives each node from which more can flow to another the branch by which it does, up to the first post.
func (f *facts) byWay(to *circuit.Node, spare func(*circuit.Branch, *circuit.Node) float64) (by map[*circuit.Node]*circuit.Branch, post *circuit.Node) {
	by = map[*circuit.Node]*circuit.Branch{to: nil}
	for queue := []*circuit.Node{to}; len(queue) > 0; queue = queue[1:] {
		n := queue[0]
		if f.c.IsPost(n) {
			return by, n
		}
		for _, b := range n.Branches {
			m := other(b, n)
			if _, met := by[m]; !met && spare(b, m) > 0 {
				by[m] = b
				queue = append(queue, m)
			}
		}
	}
	return by, nil
}

// full is the guard of the fuses between what reaches a node and what does not.
func (f *facts) full(by map[*circuit.Node]*circuit.Branch, spare func(*circuit.Branch, *circuit.Node) float64, sumA float64) guard {
	g := guard{A: sumA}
	for n := range by {
		for _, b := range n.Branches {
			if _, inside := by[other(b, n)]; inside || b.Kind != circuit.FuseBranch || !b.Feeds() || spare(b, n) <= 0 {
				continue
			}
			g.fuses = append(g.fuses, b)
		}
	}
	slices.SortFunc(g.fuses, func(a, b *circuit.Branch) int { return a.Index - b.Index })
	for _, b := range g.fuses {
		if one := (guard{A: fuseRating(b), fuse: b}); g.fuse == nil || one.before(guard{A: fuseRating(g.fuse), fuse: g.fuse}) {
			g.fuse = b
		}
	}
	if len(g.fuses) == 1 {
		g.fuses = nil
	}
	return g
}
