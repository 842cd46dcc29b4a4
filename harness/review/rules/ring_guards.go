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
	for _, atRest := range []bool{false, true} {
		if g := f.greatestFlow(n, without, atRest); g.before(most) {
			most = g
		}
	}
	return most
}

func (f *facts) greatestFlow(to *circuit.Node, without []*circuit.Branch, atRest bool) guard {
	flow, sum := map[*circuit.Branch]float64{}, 0.0
	spare := func(b *circuit.Branch, from *circuit.Node) float64 {
		if !b.Feeds() || apart(b, atRest) || slices.Contains(without, b) {
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
		by := f.byWay(to, spare)
		if by[to.Index] == nil { // what is reached ends at the fuses that are full
			return f.full(by, spare, sum)
		}
		least := math.Inf(1)
		for n := to; by[n.Index] != nil; n = other(by[n.Index], n) {
			least = math.Min(least, spare(by[n.Index], other(by[n.Index], n)))
		}
		if math.IsInf(least, 1) {
			return guard{A: least}
		}
		sum += least
		for n := to; by[n.Index] != nil; n = other(by[n.Index], n) {
			if b := by[n.Index]; b.B == n {
				flow[b] += least
			} else {
				flow[b] -= least
			}
		}
	}
}

// byWay gives each node that more can flow to the branch by which it does, up to one node.
func (f *facts) byWay(to *circuit.Node, spare func(*circuit.Branch, *circuit.Node) float64) []*circuit.Branch {
	by := make([]*circuit.Branch, len(f.c.Nodes))
	queue := slices.Clone(f.c.Posts())
	for ; len(queue) > 0 && by[to.Index] == nil; queue = queue[1:] {
		n := queue[0]
		for _, b := range n.Branches {
			if m := other(b, n); by[m.Index] == nil && !f.c.IsPost(m) && spare(b, n) > 0 {
				by[m.Index] = b
				queue = append(queue, m)
			}
		}
	}
	return by
}

// full is the guard of the fuses between what is reached and what is not.
func (f *facts) full(by []*circuit.Branch, spare func(*circuit.Branch, *circuit.Node) float64, sumA float64) guard {
	g := guard{A: sumA}
	reached := func(n *circuit.Node) bool { return by[n.Index] != nil || f.c.IsPost(n) }
	for _, b := range f.branchesOf(circuit.FuseBranch) {
		if in, out := reached(b.A), reached(b.B); !b.Feeds() || in == out || in && spare(b, b.B) <= 0 || out && spare(b, b.A) <= 0 {
			continue
		}
		g.fuses = append(g.fuses, b)
		if one := (guard{A: fuseRating(b), fuse: b}); g.fuse == nil || one.before(guard{A: fuseRating(g.fuse), fuse: g.fuse}) {
			g.fuse = b
		}
	}
	if len(g.fuses) == 1 {
		g.fuses = nil
	}
	return g
}
