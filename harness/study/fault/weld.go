package fault

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Hot is an accessory that a welded contact leaves live with the key off.
type Hot struct {
	Branch *circuit.Branch
	ByHand bool // only while some switch by hand, or its own, is closed
}

// Welded is a relay's make contact that no longer opens.
type Welded struct {
	Contact *circuit.Branch
	Hot     []Hot   // in branch order; empty = nothing stays live
	DrawA   float64 // rated current of what no switch stops
}

// weldedContacts welds every make contact in turn, with the key off.
func (s *Study) weldedContacts() {
	c := s.Circuit
	rest, hand := c.LiveKeyOff(false), c.LiveKeyOff(true)
	for _, b := range c.Branches {
		if b.Closer == nil || b.Closer.Coil == nil {
			continue
		}
		w := &Welded{Contact: b}
		s.Welded = append(s.Welded, w)
		if b.Returns() {
			w.hotBack(c, rest, hand)
			continue
		}
		if !hand[b.A.Index] {
			continue
		}
		byRest := map[*circuit.Node]bool{}
		if rest[b.A.Index] {
			byRest = liveFrom(c, b.B, rest, false)
		}
		byHand := liveFrom(c, b.B, hand, true)
		for _, l := range loadsAt(byHand) {
			if !rest[l.A.Index] {
				still := slices.Contains(loadsAt(byRest), l)
				w.Hot = append(w.Hot, Hot{Branch: l, ByHand: !still})
				if still && !l.Follows() {
					w.DrawA += l.Load.RatedA()
				}
			}
		}
	}
}

// hotBack finds what a contact that stands in a return leaves on: live loads whose way
// back it keeps closed.
func (w *Welded) hotBack(c *circuit.Circuit, rest, hand []bool) {
	back := func(welded, byHand bool) []bool {
		return c.JoinedBack(func(b *circuit.Branch) bool {
			k := b.Closer
			return welded && b == w.Contact || k.Break != nil || byHand && k.Switch != nil
		})
	}
	before, atRest, byHand := back(false, false), back(true, false), back(true, true)
	for _, l := range c.DrawsBack(w.Contact) {
		if !isAccessory(l) || !hand[l.A.Index] || !byHand[l.B.Index] || rest[l.A.Index] && before[l.B.Index] {
			continue
		}
		on := rest[l.A.Index] && atRest[l.B.Index]
		w.Hot = append(w.Hot, Hot{Branch: l, ByHand: !on})
		if on {
			w.DrawA += l.Load.RatedA()
		}
	}
}

// loadsAt lists the accessories that some nodes feed, in branch order.
func loadsAt(nodes map[*circuit.Node]bool) []*circuit.Branch {
	var out []*circuit.Branch
	for n := range nodes {
		for _, b := range n.Branches {
			if b.A == n && isAccessory(b) {
				out = append(out, b)
			}
		}
		out = append(out, n.Turns()...)
	}
	slices.SortFunc(out, func(a, b *circuit.Branch) int { return a.Index - b.Index })
	return slices.Compact(out)
}

// liveFrom floods downstream from a node with the key off: through make
// contacts once their coil is live, and by hand through switches.
func liveFrom(c *circuit.Circuit, start *circuit.Node, live []bool, byHand bool) map[*circuit.Node]bool {
	seen := map[*circuit.Node]bool{start: true}
	queue := []*circuit.Node{start}
	visit := func(n *circuit.Node) {
		if !seen[n] {
			seen[n] = true
			queue = append(queue, n)
		}
	}
	for len(queue) > 0 {
		n := queue[0]
		queue = queue[1:]
		for _, b := range n.FeedsOn() {
			if passes(c, b, seen, live, byHand) {
				visit(b.B)
			}
		}
		for _, b := range n.Branches {
			for _, contact := range c.ContactsOf(b) {
				if b.A == n && contact.Closer.Coil == b && (seen[contact.A] || live[contact.A.Index]) {
					visit(contact.B)
				}
			}
		}
	}
	return seen
}

// passes tells whether a branch conducts with the key off.
func passes(c *circuit.Circuit, b *circuit.Branch, seen map[*circuit.Node]bool, live []bool, byHand bool) bool {
	k := b.Closer
	switch {
	case k == nil, k.Break != nil:
		return true
	case k.Latch != nil:
		return byHand
	case k.Coil != nil:
		return seen[k.Coil.A] || live[k.Coil.A.Index]
	case k.Key != "":
		return k.Key == design.WhenAlways || k.KeyOff && byHand
	case k.Standby != nil:
		return true
	}
	return byHand
}
