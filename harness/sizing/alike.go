package sizing

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// alike joins the wires that a fitter makes of one size: feed and return of a part, plus
// and minus of a panel, and the wire before a fuse, a switch or a contact with the one wire
// behind it, which it is never to be thinner than. Wires of other types, of given sizes and
// those apart stay by themselves.
func alike(d *design.Design, slots []*slot, apart map[home]bool) []*slot {
	c, _ := circuit.Build(d) // where it cannot be built, plus and minus of a panel stay by themselves
	join := map[*slot]*slot{}
	first := func(x *slot) *slot {
		for join[x] != nil {
			x = join[x]
		}
		return x
	}
	for k, x := range slots {
		for _, y := range slots[:k] {
			if a, b := first(x), first(y); a != b && !apart[x.home()] && !apart[y.home()] && belong(d, c, y, x) {
				if slices.Index(slots, a) < slices.Index(slots, b) {
					a, b = b, a
				}
				join[a] = b
			}
		}
	}
	var list []*slot
	for _, x := range slots {
		if y := first(x); y != x {
			y.also = append(y.also, x)
		} else {
			list = append(list, x)
		}
	}
	return list
}

// belong tells whether two open wires are to be of one size.
func belong(d *design.Design, c *circuit.Circuit, x, y *slot) bool {
	if x.kind != WireSize || y.kind != WireSize || x.feeds[0].Wire.Type != y.feeds[0].Wire.Type {
		return false
	}
	if _, bank := x.owner.(*design.Bank); bank && x.owner == y.owner {
		return false // what charges it comes in by one, what it gives returns by the other
	}
	if x.owner == y.owner {
		return x.role == circuit.FeedWire && y.role == circuit.ReturnWire ||
			x.role == circuit.CoilFeedWire && y.role == circuit.CoilReturnWire
	}
	return behind(d, x, y) || behind(d, y, x) || c != nil && (ofPanel(c, x, y) || ofPanel(c, y, x))
}

// ofPanel tells whether a ground block brings back what a block feeds, and nothing else: plus and minus of a panel are laid
// in one size.
func ofPanel(c *circuit.Circuit, plus, minus *slot) bool {
	block, isBlock := plus.owner.(*design.Block)
	ground, isGround := minus.owner.(*design.Ground)
	if !isBlock || !isGround || plus.role != circuit.FeedWire || minus.role != circuit.ReturnWire {
		return false
	}
	_, alone := c.BringsBack(ground, block)
	return alone
}

// behind tells whether a slot has the only wire behind a fuse, a switch or a relay's
// contact, whose own feed the other is.
func behind(d *design.Design, before, after *slot) bool {
	switch before.owner.(type) {
	case *design.Fuse, *design.Switch, *design.Relay:
	default:
		return false
	}
	fedBy := func(f design.Feed) bool { return f.From.Part == before.owner }
	if before.role != circuit.FeedWire || after.role != circuit.FeedWire || len(after.feeds) > 1 || !fedBy(after.feeds[0]) {
		return false
	}
	fed := 0
	for _, l := range leads(d) {
		for _, f := range *l.feeds {
			if fedBy(f) && l.role == circuit.FeedWire { // coils take next to nothing
				fed++
			}
		}
	}
	return fed == 1
}

// each are a slot and those that go with it.
func (s *slot) each() []*slot { return append([]*slot{s}, s.also...) }

func (s *slot) home() home { return home{s.owner, s.role, s.own} }
