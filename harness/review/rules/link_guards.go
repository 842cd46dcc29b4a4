package rules

import (
	"iter"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// links gives each further battery with each of its links.
func (f *facts) links() iter.Seq2[*circuit.Part, *circuit.Branch] {
	return func(yield func(*circuit.Part, *circuit.Branch) bool) {
		for part := range each[*design.Bank](f) {
			for _, b := range f.c.Links(part.Terminal("+").Node) {
				if !yield(part, b) {
					return
				}
			}
		}
	}
}

// guardTaps raises the guard of what hangs on a link between two batteries to what the
// fuses of both ends let through together. A fault in the link itself draws from either
// end up to itself, so that its wires keep the guard of one.
func (f *facts) guardTaps() {
	f.guardTap = map[*circuit.Branch]guard{}
	linked := f.linked
	if linked == nil {
		return
	}
	for _, n := range f.c.Nodes {
		var far []*circuit.Branch
		for _, b := range n.FedBy() {
			far = append(far, linked.Fuses[b.Index]...)
		}
		if len(far) == 0 || f.c.IsPost(n) {
			continue
		}
		near, _ := f.nearest.Above(n)
		for _, b := range n.FeedsOn() {
			if g := f.guards[n.Index].beside(slices.Concat(near, far)); !f.inLink(b) && g.known() {
				f.guardTap[b] = g
				f.raiseBelow(b, far)
			}
		}
	}
}

// inLink tells whether a branch stands in a link between two batteries.
func (f *facts) inLink(b *circuit.Branch) bool {
	return f.linked != nil && (f.linked.Bare[b.Index] || len(f.linked.Fuses[b.Index]) > 0)
}

// raiseBelow lets fuses feed what hangs on a branch too, as far as its own fuses.
func (f *facts) raiseBelow(b *circuit.Branch, far []*circuit.Branch) {
	if b.Kind == circuit.FuseBranch || f.c.IsPost(b.B) {
		return
	}
	near, _ := f.nearest.Above(b.B)
	g := f.guards[b.B.Index].beside(slices.Concat(near, far))
	if !g.before(f.guards[b.B.Index]) {
		return
	}
	f.guards[b.B.Index] = g
	for _, x := range b.B.FeedsOn() {
		f.raiseBelow(x, far)
	}
}

// beside is a guard with all fuses that feed side by side: as it was where one is missing
// or of no known rating.
func (g guard) beside(fuses []*circuit.Branch) guard {
	if !g.known() {
		return g
	}
	sum := guard{}
	for _, b := range fuses {
		switch r := fuseRating(b); {
		case r == 0:
			return g
		case !slices.Contains(sum.fuses, b):
			sum.A, sum.fuses = sum.A+r, append(sum.fuses, b)
			if one := (guard{A: r, fuse: b}); sum.fuse == nil || one.before(guard{A: fuseRating(sum.fuse), fuse: sum.fuse}) {
				sum.fuse = b
			}
		}
	}
	return sum
}

// intoCharger is the protection of what batteries drive into the output of a charger that is
// shorted inside.
func (f *facts) intoCharger(p *circuit.Part, out *circuit.Branch) guard {
	fuses, bare := f.linked.Into(out.A)
	if bare || len(fuses) == 0 {
		return guard{}
	}
	g := guard{A: fuseRating(fuses[0]), fuse: fuses[0]}.beside(fuses)
	g.says = "the way from the battery back into " + p.Name + " is"
	return g
}

// guardBank gives the negative cable of a further battery the largest fuse through which
// that battery can drive a fault, since such a fault returns to its own post: those
// of what it feeds, and those of its links.
func (f *facts) guardBank(p *circuit.Part) {
	plus, minus := p.Terminal("+").Node, p.Terminal("-").Node
	if minus == f.c.Negative() {
		return
	}
	var link guard
	for _, b := range f.linkFuses(plus) {
		if g := (guard{A: fuseRating(b), fuse: b}); g.before(link) {
			link = g
		}
	}
	ways := slices.Collect(f.c.Homeward(minus))
	for _, b := range ways {
		f.raiseCold(b, link)
	}
	supplied := f.floodBy([]*circuit.Node{plus}, func(b *circuit.Branch, from *circuit.Node) bool {
		return b.Feeds() && b.A == from && (from == plus || !f.c.IsPost(from))
	})
	for _, part := range f.c.Parts {
		hot, back, ok := part.Draws()
		if !ok || !supplied[hot.Node.Index] {
			continue
		}
		reached := f.flood(back.Node, func(b *circuit.Branch) bool { return b.Returns() && !slices.Contains(ways, b) })
		for _, b := range ways {
			if !reached[minus.Index] && !reached[b.A.Index] {
				f.raiseCold(b, f.guards[hot.Node.Index])
			}
		}
	}
}

// raiseCold sets the guard of a return where one lets through more.
func (f *facts) raiseCold(b *circuit.Branch, g guard) {
	if g.known() && g.before(f.guardCold[b.A.Index]) {
		g.says = "what returns by it is"
		f.guardCold[b.A.Index] = g
	}
}

// linkFuses are the first fuses from a battery's post towards what feeds it.
func (f *facts) linkFuses(post *circuit.Node) (fuses []*circuit.Branch) {
	seen := map[*circuit.Node]bool{post: true}
	for queue := []*circuit.Node{post}; len(queue) > 0; queue = queue[1:] {
		for _, b := range queue[0].FedBy() {
			switch {
			case b.Kind == circuit.FuseBranch:
				fuses = append(fuses, b)
			case !seen[b.A] && !f.c.IsPost(b.A):
				seen[b.A] = true
				queue = append(queue, b.A)
			}
		}
	}
	return fuses
}
