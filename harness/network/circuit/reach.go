package circuit

import "fusewright/harness/design"

// Reach tells, by node index, which nodes are one conductor with one of the nodes: over
// wires, fuses, links, the frame and those contacts that closed says are
// closed; not through loads, coils or sources. Linear.
func Reach(c *Circuit, closed func(*Branch) bool, from ...*Node) []bool {
	r := newReacher(c, closed)
	for _, n := range from {
		r.visit(n)
	}
	r.run(nil)
	return r.seen
}

type reacher struct {
	closed func(*Branch) bool
	seen   []bool
	stack  []*Node
}

func newReacher(c *Circuit, closed func(*Branch) bool) *reacher {
	return &reacher{closed: closed, seen: make([]bool, len(c.Nodes))}
}

func (r *reacher) visit(n *Node) {
	if !r.seen[n.Index] {
		r.seen[n.Index] = true
		r.stack = append(r.stack, n)
	}
}

// run spreads until nothing new is reached; on each node it calls arrived.
func (r *reacher) run(arrived func(*Node)) {
	for len(r.stack) > 0 {
		n := r.stack[len(r.stack)-1]
		r.stack = r.stack[:len(r.stack)-1]
		if arrived != nil {
			arrived(n)
		}
		for _, b := range n.Branches {
			if b.Conductor() && b.Passes(n) && (b.Kind != ContactBranch || r.closed(b)) {
				r.visit(b.A)
				r.visit(b.B)
			}
		}
	}
}

// LiveKeyOff tells, by node index, which nodes the battery can hold live with
// the key off: key contacts open (but those that are always closed), break
// contacts closed, make contacts closed once their coil is live and has its way back,
// and manual and own switches closed or open as switches says. With switches true it is
// what can be live; with false, what is live whatever anyone does. It says nothing
// of voltages: package solve does. Linear; with contacts in returns, times the relays there.
func (c *Circuit) LiveKeyOff(switches bool) []bool {
	pulledIn := map[*Branch]bool{}
	closed := func(b *Branch) bool {
		k := b.Closer
		switch {
		case b.Rests(): // at either end of it there may be the other way
			return false
		case k.Latch != nil:
			return switches
		case k.Coil != nil:
			return pulledIn[k.Coil]
		case k.Break != nil:
			return true
		case k.Key != "":
			return k.Key == design.WhenAlways || k.KeyOff && switches
		}
		return switches
	}
	for {
		was := len(pulledIn)
		live := c.liveKeyOff(closed, pulledIn, c.shutOff(closed))
		if len(pulledIn) == was || !c.flow.switchedBack {
			return live
		}
	}
}

func (c *Circuit) liveKeyOff(closed func(*Branch) bool, pulledIn map[*Branch]bool, shut []bool) []bool {
	r := newReacher(c, closed)
	for _, post := range c.Posts() {
		r.visit(post)
	}
	r.run(func(n *Node) {
		if out := c.Gives(n); out != nil {
			r.visit(out)
		}
		for _, b := range n.Branches {
			contacts := c.flow.contacts[b]
			if b.A == n && len(contacts) > 0 && !pulledIn[b] && !b.Senses() && (shut == nil || !shut[b.B.Index]) {
				pulledIn[b] = true
				for _, contact := range contacts {
					if r.seen[contact.A.Index] || r.seen[contact.B.Index] {
						r.visit(contact.A)
						r.visit(contact.B)
					}
				}
			}
		}
	})
	return r.seen
}

// shutOff tells, by node index, which nodes an open contact parts from the battery's
// negative post; nil = no contact stands in a return.
func (c *Circuit) shutOff(closed func(*Branch) bool) []bool {
	if !c.flow.switchedBack {
		return nil
	}
	now := c.JoinedBack(closed)
	shut := c.JoinedBack(func(*Branch) bool { return true })
	for i := range shut {
		shut[i] = shut[i] && !now[i]
	}
	return shut
}

// SwitchedBack tells whether a contact stands in a return.
func (c *Circuit) SwitchedBack() bool { return c.flow.switchedBack }

// JoinedBack tells, by node index, which nodes the returns join to the battery's negative
// post, over those contacts that closed says are closed, and over the loads in series with
// another. Linear.
func (c *Circuit) JoinedBack(closed func(*Branch) bool) []bool {
	seen := make([]bool, len(c.Nodes))
	seen[c.Negative().Index] = true
	for stack := []*Node{c.Negative()}; len(stack) > 0; {
		n := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, b := range n.Branches {
			if !b.TakesBack() || b.Kind == ContactBranch && !closed(b) {
				continue
			}
			for _, m := range []*Node{b.A, b.B} {
				if !seen[m.Index] {
					seen[m.Index], stack = true, append(stack, m)
				}
			}
		}
	}
	return seen
}
