package circuit

import "slices"

// Linked is what stands in the links of further batteries, and between the first and a charging system that
// feeds at its stud, as such a battery sees it: from
// its post towards what feeds it, against the direction of the feeds. A short in a link
// draws from both ends.
type Linked struct {
	Fuses [][]*Branch // by branch: the nearest fuses towards further batteries; of a fuse those beyond it
	Bare  []bool      // by branch: current can come from a further battery without a fuse
	BareM []float64   // by branch: the longest such way from the battery's post, to the far end of the branch
	first []*Branch   // of each link at its battery
}

// First are the branches that lead from what charges the further batteries to their posts.
func (l *Linked) First() []*Branch { return l.first }

// Linked follows the links; nil where no battery is charged through one.
func (c *Circuit) Linked() *Linked {
	charged := slices.DeleteFunc(slices.Clone(c.flow.posts), func(n *Node) bool { return len(n.fedBy) == 0 })
	if len(charged) == 0 {
		return nil
	}
	l := &Linked{Fuses: make([][]*Branch, len(c.Branches)), Bare: make([]bool, len(c.Branches)), BareM: make([]float64, len(c.Branches))}
	for _, post := range charged {
		l.first = append(l.first, post.fedBy...)
		l.from(c, post, nil, 0)
	}
	return l
}

// Into are the nearest fuses through which further batteries feed back into a node that charges
// them, such as the output of a charger; bare tells of a way without one.
func (l *Linked) Into(n *Node) (fuses []*Branch, bare bool) {
	if l == nil {
		return nil, false
	}
	var at Guard
	for _, b := range n.feeds {
		bare = bare || l.Bare[b.Index]
		for _, f := range l.Fuses[b.Index] {
			at.addFuse(f)
		}
	}
	return at.Fuses, bare
}

// from spreads what protects from a node on upwards. A branch met again by as many fuses
// and no longer way adds nothing.
func (l *Linked) from(c *Circuit, n *Node, fuse *Branch, bareM float64) {
	for _, b := range n.fedBy {
		i, lengthM := b.Index, bareM
		if b.Wire != nil {
			lengthM += b.Wire.LengthM
		}
		switch {
		case !b.Passes(b.B): // a diode lets nothing back
			continue
		case fuse == nil:
			if l.Bare[i] && l.BareM[i] >= lengthM {
				continue
			}
			l.Bare[i], l.BareM[i] = true, lengthM
		default:
			if slices.Contains(l.Fuses[i], fuse) {
				continue
			}
			l.Fuses[i] = append(l.Fuses[i], fuse)
		}
		next := fuse
		if b.Kind == FuseBranch {
			next = b
		}
		if !c.IsPost(b.A) {
			l.from(c, b.A, next, lengthM)
		}
	}
}

// BatteriesBelow are the batteries that a branch leads to, each once: what is fed beyond
// one is fed by it.
func (c *Circuit) BatteriesBelow(b *Branch) (batteries []*Part) {
	if !c.BothWays() {
		return nil
	}
	seen := map[*Node]bool{}
	var down func(n *Node)
	down = func(n *Node) {
		if seen[n] {
			return
		}
		seen[n] = true
		if c.IsPost(n) {
			for _, t := range n.Terminals {
				if t.isPost() {
					batteries = append(batteries, t.Part)
				}
			}
			return
		}
		for _, next := range n.FeedsOn() {
			down(next.B)
		}
	}
	down(b.B)
	return batteries
}
