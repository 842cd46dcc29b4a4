package rules

import (
	"container/heap"
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
)

// guard is the protection of a node against the source: the smallest fuse on
// the way, and of several ways those that let through most together, since a
// fault draws through all of them. Without a fuse on some way it is open.
type guard struct {
	A     float64           // let through for good; +Inf without a fuse, 0 when not reached or the rating is not known
	fuse  *circuit.Branch   // the one that opens, of several the largest; nil without
	fuses []*circuit.Branch // all, where several meet; nil = the one
	says  string            // what it protects, in words; "" = a feed, or what stands behind it
	wires []*circuit.Wire   // of a wire, those that lie side by side and share A
}

// text is what protects, in words: "fuse F1 (main, 30 A)", "fuse F1 (left, 30 A) and
// fuse F2 (right, 30 A) side by side, 60 A together".
func (g guard) text() string {
	if n := len(g.wires); n > 1 {
		all := g
		all.wires, all.A = nil, g.A*float64(n)
		return fmt.Sprintf("%s, %s for each of %d wires side by side,", all.text(), rated(g.A), n)
	}
	if len(g.fuses) < 2 {
		return fuseText(g.fuse)
	}
	var list []string
	for _, b := range g.fuses {
		list = append(list, fuseText(b))
	}
	slices.Sort(list)
	return wording.Few(list, 4) + " side by side, " + rated(g.A) + " together"
}

// all are the fuses of a known rating.
func (g guard) all() []*circuit.Branch {
	switch {
	case !g.known():
		return nil
	case len(g.fuses) > 0:
		return g.fuses
	}
	return []*circuit.Branch{g.fuse}
}

// verb is the first word for one fuse, the second for several.
func (g guard) verb(one, several string) string {
	if len(g.fuses) < 2 {
		return one
	}
	return several
}

// before tells whether a guard counts before another: it lets through more, or as
// much and its fuse comes first by name.
func (g guard) before(h guard) bool {
	if g.A != h.A || g.fuse == nil || h.fuse == nil {
		return g.A > h.A
	}
	return fusePlace(g.fuse) < fusePlace(h.fuse)
}

// known tells whether there is a fuse with a rating to compare with.
func (g guard) known() bool { return g.fuse != nil && g.A > 0 }

// open tells of a way without a fuse.
func (g guard) open() bool { return g.fuse == nil && math.IsInf(g.A, 1) }

// fuseRating is the rating of a fuse branch in amperes, 0 when not known.
func fuseRating(b *circuit.Branch) float64 {
	if b.Fuse == nil || b.Fuse.Rating == nil {
		return 0
	}
	return b.Fuse.Rating.RatingA
}

// findGuards spreads the protection from the battery over all metal (the
// widest path from the source, Dijkstra with the largest bottleneck first) and
// then through the loads to their returns.
func (f *facts) findGuards() {
	f.guards = make([]guard, len(f.c.Nodes))
	f.guardCold = make([]guard, len(f.c.Nodes))
	f.nearest = f.c.Guards()
	if f.positive == nil {
		return
	}
	f.spreadGuards()
	f.joinGuards()
	f.guardTaps()
	f.guardRings()
	f.guardStud()
	for _, p := range f.c.Parts {
		f.guardReturns(p)
	}
	for _, p := range f.partsOf(circuit.Bank) {
		f.guardBank(p)
	}
}

func (f *facts) spreadGuards() {
	done := make([]bool, len(f.c.Nodes))
	q := &guardQueue{}
	for _, post := range f.c.Posts() {
		heap.Push(q, reached{post, guard{A: math.Inf(1)}})
	}
	for q.Len() > 0 {
		at := heap.Pop(q).(reached)
		if done[at.node.Index] {
			continue
		}
		done[at.node.Index], f.guards[at.node.Index] = true, at.guard
		for _, b := range at.node.Branches {
			m := other(b, at.node)
			if m == nil || done[m.Index] || !b.Feeds() || at.node == b.B && !b.Passes(b.B) { // a diode lets nothing back
				continue
			}
			heap.Push(q, reached{m, at.guard.behind(b)})
		}
	}
}

// behind is the guard behind one more branch on the way.
func (g guard) behind(b *circuit.Branch) guard {
	if r := fuseRating(b); b.Kind == circuit.FuseBranch && r < g.A {
		return guard{A: r, fuse: b}
	}
	return g
}

// above is the next fuse towards the source, nil when some way has none, be it one
// that comes back through the fuse from its far end; of parallel feeds the one on
// the way that lets through most.
func (f *facts) above(fuse *circuit.Branch) *circuit.Branch {
	var most *circuit.Branch
	var lets guard
	at := f.nearest[fuse.Index]
	for _, up := range at.Fuses {
		g := f.guards[up.A.Index].behind(up)
		if most == nil || g.before(lets) || !lets.before(g) && fusePlace(up) < fusePlace(most) {
			most, lets = up, g
		}
	}
	if far := f.guards[fuse.B.Index]; at.Bare || far.open() {
		return nil
	}
	return most
}

// guardReturns carries the protection of a part's feed to its return wires and
// the grounds beyond: what a fault inside the part can drive through them. A fuse that
// stands in the way back opens for the wires in series with it, before it and behind it.
func (f *facts) guardReturns(p *circuit.Part) {
	if hot, back, ok := p.Draws(); ok {
		f.guardBack(back.Node, f.guards[hot.Node.Index])
	}
	if out := p.Output(); out != nil {
		f.guardBack(out.B, f.intoCharger(p, out))
	}
}

// guardBack carries a protection from where a return begins.
func (f *facts) guardBack(from *circuit.Node, g guard) {
	if !g.known() {
		return
	}
	queue := []reached{{from, g}}
	for len(queue) > 0 {
		at := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		n, g := at.node, at.guard.behindOnlyWay(at.node)
		if n.Index == 0 || f.isHome(n, g) || !g.before(f.guardCold[n.Index]) {
			continue
		}
		f.guardCold[n.Index] = g
		for _, b := range n.ReturnsBy() {
			queue = append(queue, reached{b.B, g.behind(b)})
		}
	}
}

// behindOnlyWay is the guard behind the fuses that stand in the only way back from a
// node, up to where the current may take several.
func (g guard) behindOnlyWay(n *circuit.Node) guard {
	seen := map[*circuit.Node]bool{}
	for n.Index != 0 && !seen[n] {
		seen[n] = true
		out := n.ReturnsBy()
		if len(out) != 1 {
			break
		}
		g, n = g.behind(out[0]), out[0].B
	}
	return g
}

// isHome tells whether all that a protection lets through comes from the battery of which a
// node is the negative post: it goes no further.
func (f *facts) isHome(n *circuit.Node, g guard) bool {
	for _, b := range g.all() {
		if homes := f.c.Homes(b.A); len(homes) != 1 || homes[0] != n {
			return false
		}
	}
	return g.known()
}

func isReturn(w *circuit.Wire) bool {
	return w.Role.Returns()
}

// guardAt is the protection of what a branch carries.
func (f *facts) guardAt(b *circuit.Branch) guard {
	if b.Returns() {
		return f.guardCold[b.A.Index]
	}
	var most guard
	found := false
	for _, of := range []map[*circuit.Branch]guard{f.guardMachine, f.guardTap, f.guardRing} {
		if g, ok := of[b]; ok && (!found || g.before(most)) {
			most, found = g, true
		}
	}
	if found {
		return most
	}
	return f.guards[b.A.Index]
}

// guardOf is the protection of a wire.
func (f *facts) guardOf(w *circuit.Wire) guard {
	g := f.guardAt(w.Branch)
	g.wires = w.Parallel()
	g.A = w.Branch.ShareA(g.A)
	return g
}

// reached is a node with the protection it is reached with.
type reached struct {
	node  *circuit.Node
	guard guard
}

// guardQueue gives the least protected node first; of equals the one whose fuse
// comes first by name, then by node index, so that the result does not depend on
// the order of pushes.
type guardQueue []reached

func (q guardQueue) Len() int      { return len(q) }
func (q guardQueue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q guardQueue) Less(i, j int) bool {
	a, b := q[i], q[j]
	switch {
	case a.guard.before(b.guard):
		return true
	case b.guard.before(a.guard):
		return false
	}
	return a.node.Index < b.node.Index
}

// Push adds a node, for package heap.
func (q *guardQueue) Push(x any) { *q = append(*q, x.(reached)) }

// Pop takes the last node, for package heap.
func (q *guardQueue) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}
