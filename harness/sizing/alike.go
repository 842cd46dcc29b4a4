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
	join := map[*slot]*slot{}
	first := func(x *slot) *slot {
		for join[x] != nil {
			x = join[x]
		}
		return x
	}
	for k, x := range slots {
		for _, y := range slots[:k] {
			if a, b := first(x), first(y); a != b && !apart[x.home()] && !apart[y.home()] && belong(d, y, x) {
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
func belong(d *design.Design, x, y *slot) bool {
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
	return behind(d, x, y) || behind(d, y, x) || ofPanel(d, x, y) || ofPanel(d, y, x)
}

// ofPanel tells whether a ground block brings back what a block feeds, and nothing else but
// what coils take: plus and minus of a panel are laid in one size.
func ofPanel(d *design.Design, plus, minus *slot) bool {
	block, isBlock := plus.owner.(*design.Block)
	ground, isGround := minus.owner.(*design.Ground)
	if !isBlock || !isGround || plus.role != circuit.FeedWire || minus.role != circuit.ReturnWire {
		return false
	}
	all := leads(d)
	returning := 0
	for _, l := range all {
		for _, f := range *l.feeds {
			if l.role != circuit.ReturnWire || f.From.Part != design.Part(ground) {
				continue
			}
			if returning++; !fedBelow(all, l.owner, block, map[design.Part]bool{}) {
				return false
			}
		}
	}
	return returning > 1
}

// fedBelow tells whether all that feeds a part comes from a block; of a switch or resistor in the return, all whose
// current it brings back. seen are the parts asked before.
func fedBelow(all []lead, part design.Part, block *design.Block, seen map[design.Part]bool) bool {
	if part == design.Part(block) || seen[part] {
		return true
	}
	seen[part] = true
	fed := false
	for _, l := range all {
		for _, f := range *l.feeds {
			from := f.From.Part
			switch {
			case l.owner == part && l.role == circuit.FeedWire:
			case from == part && l.role == circuit.ReturnWire:
				from = l.owner
			default:
				continue
			}
			if fed = true; !fedBelow(all, from, block, seen) {
				return false
			}
		}
	}
	return fed
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
