package fault

import "fusewright/harness/network/circuit"

// stems is what hangs on the network by one branch alone. The current of a short
// there is the same on all the way to where the stem begins, so that the way is
// told once for all shorts: its next fuse, and of each kind of wire the one that
// bears least, the nearest of equal ones. A short then costs the kinds of wire on
// its way and not their number. Ways of fewer than longStem branches are followed
// one by one.
//
// Coils do not count as joining anything. What they draw is added on the way to
// the source, so that the current where the stem begins is the most on it.
type stems struct {
	feed []stem // by node
	back []stem // by node
}

var longStem = 64 // a variable for tests alone

// stem is the way from one node; foot is nil for nodes that stand on none.
type stem struct {
	foot  *circuit.Node   // where it begins
	first *circuit.Branch // there
	long  int             // branches
	fuse  *circuit.Branch // the nearest on the way; nil = none
	wires *strand         // nearest first
}

// strand is a wire on a way that stands for those of its kind.
type strand struct {
	wire *circuit.Wire
	bears
	next *strand
}

// bears is what kind of wire bears how much: the same material, size, ambient and
// cover, as warm by others, with the share of the lone wire's current by what warms it
// with its own.
type bears struct {
	kind  int32
	share float64
}

// with is the list with a nearer wire, unless one of its kind bears less.
func (s *strand) with(wire *circuit.Wire, what bears) *strand {
	for at := s; at != nil; at = at.next {
		switch {
		case at.kind != what.kind:
		case at.share < what.share:
			return s
		default:
			return &strand{wire, what, s.cut(at)}
		}
	}
	return &strand{wire, what, s}
}

// cut copies the list up to one of its strands, which it leaves out; what stands
// behind it is shared.
func (s *strand) cut(out *strand) *strand {
	var first *strand
	for last := &first; ; s = s.next {
		if s == out {
			*last = out.next
			return first
		}
		*last = &strand{s.wire, s.bears, nil}
		last = &(*last).next
	}
}

// newStems takes nodes with a single branch off the network until there are none.
// Loads do not count: in the network of shorts they draw nothing.
func newStems(c *circuit.Circuit, wires *Wires) *stems {
	s := &stems{feed: make([]stem, len(c.Nodes)), back: make([]stem, len(c.Nodes))}
	order, by := dangling(c, conducts)
	for i := len(order) - 1; i >= 0; i-- {
		n := order[i]
		b := by[n.Index]
		if from := n.FedBy(); len(from) == 1 && from[0] == b {
			s.feed[n.Index] = onward(s.feed[b.A.Index], b, b.A, wires)
		}
		if to := n.ReturnsBy(); len(to) == 1 && to[0] == b && b.Wire != nil {
			s.back[n.Index] = onward(s.back[b.B.Index], b, b.B, wires)
		}
	}
	return s
}

// onward is the way by a branch to a node, and on from there.
func onward(from stem, b *circuit.Branch, at *circuit.Node, wires *Wires) stem {
	if from.foot == nil {
		from = stem{foot: at, first: b}
	}
	from.long++
	if b.Wire != nil {
		from.wires = from.wires.with(b.Wire, wires.bears[b.Wire.Index])
	}
	if b.Kind == circuit.FuseBranch {
		from.fuse = b
	}
	return from
}

// dangling lists the nodes that one of the branches that count joins to the rest
// once those listed before are gone, with that branch by node; the battery's
// posts stay.
func dangling(c *circuit.Circuit, counts func(*circuit.Branch) bool) (order []*circuit.Node, by []*circuit.Branch) {
	degree, gone := make([]int, len(c.Nodes)), make([]bool, len(c.Nodes))
	by = make([]*circuit.Branch, len(c.Nodes))
	for _, b := range c.Branches {
		if counts(b) && b.A != b.B {
			degree[b.A.Index]++
			degree[b.B.Index]++
		}
	}
	take := func(n *circuit.Node) {
		if degree[n.Index] == 1 && !c.IsPost(n) && n != c.Negative() {
			order, gone[n.Index] = append(order, n), true
		}
	}
	for _, n := range c.Nodes {
		take(n)
	}
	for i := 0; i < len(order); i++ {
		n := order[i]
		for _, b := range n.Branches {
			other := b.A
			if other == n {
				other = b.B
			}
			if !counts(b) || other == n || gone[other.Index] {
				continue
			}
			by[n.Index] = b
			degree[other.Index]--
			take(other)
		}
	}
	return order, by
}

// conducts tells whether a branch can be part of the network of shorts, coils and
// their suppressors left out.
func conducts(b *circuit.Branch) bool { return b.Conductor() || b.Kind == circuit.BatteryBranch }
