package circuit

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
)

// bypass is a way to or from a load that needs switches closed without which another way leaves it on, a resistor on
// one of the two: full speed past it.
type bypass struct {
	switches []*design.Switch // that the other does without
	contacts []*Branch        // on the way, that hang on these
	last     []*design.Switch // nearest to the load
	parts    bool             // its contact is closed at rest: the switches open it
}

// bypasses are those of a load, each set of switches once. Switches with positions are not among them (Positions).
func (c *Circuit) bypasses(load *Branch) (list []bypass) {
	if len(c.Design.Resistors) == 0 || !c.BehindDropper(load) {
		return nil
	}
	feeds, _ := c.FeedPaths(load.A)
	returns, _ := c.ReturnPaths(load.B)
	add := func(x bypass) {
		if len(x.switches) > 0 && !slices.ContainsFunc(list, func(o bypass) bool {
			return slices.Equal(o.switches, x.switches) && slices.Equal(o.contacts, x.contacts)
		}) {
			list = append(list, x)
		}
	}
	for _, ways := range [][]Path{feeds, returns} {
		for _, way := range ways {
			needs := c.handsOf(way.Branches, 0)
			var fewer []*design.Switch
			over := slices.ContainsFunc(way.Branches, (*Branch).Dropper)
			for _, other := range ways {
				hands := c.handsOf(other.Branches, 0)
				if len(without(hands, needs)) == 0 && len(hands) < len(needs) && (over || slices.ContainsFunc(other.Branches, (*Branch).Dropper)) &&
					(fewer == nil || len(hands) > len(fewer)) {
					fewer = append([]*design.Switch{}, hands...)
				}
			}
			for _, b := range way.Branches {
				if k := b.Closer; k != nil && k.Break != nil && k.Coil != nil && len(ways) > 1 {
					add(bypass{switches: c.worksCoil(k.Coil, 0), contacts: []*Branch{b}, parts: true})
				}
			}
			if fewer == nil {
				continue
			}
			x := bypass{switches: without(needs, fewer), last: c.lastSwitches(way, 0)}
			for _, b := range way.Branches {
				if slices.ContainsFunc(c.handsOf([]*Branch{b}, 0), func(w *design.Switch) bool { return slices.Contains(x.switches, w) }) {
					x.contacts = append(x.contacts, b)
				}
			}
			add(x)
		}
	}
	return list
}

// handsOf are the switches without positions that close a way, those of the coils of its relays included, each once.
func (c *Circuit) handsOf(way []*Branch, depth int) (list []*design.Switch) {
	for _, b := range way {
		k := b.Closer
		var more []*design.Switch
		switch {
		case k == nil || k.Break != nil || k.Latch != nil:
		case k.Switch != nil && k.Output == "":
			more = []*design.Switch{k.Switch.Lead()}
		case k.Coil != nil && depth < deepestRelay:
			more = c.worksCoil(k.Coil, depth+1)
		}
		list = append(list, without(more, list)...)
	}
	return list
}

// worksCoil are the switches that a coil needs closed, on the first way to it and back.
func (c *Circuit) worksCoil(coil *Branch, depth int) []*design.Switch {
	back := c.MainReturn(coil.B, c.Home(coil.A))
	return c.handsOf(slices.Concat(c.MainFeed(coil.A).Branches, back.Branches), depth)
}

// leftOpen are the contacts of bypasses that a situation leaves open: it names none of their last switches as closed,
// and its loads are on without. One with everything on has them closed.
func (c *Circuit) leftOpen(s *design.Situation) map[*Branch]bool {
	if len(c.Design.Resistors) == 0 || s.All {
		return nil
	}
	open := map[*Branch]bool{}
	var others []*Branch
	for _, b := range c.Branches {
		if b.Load == nil || b.Load.Load == nil || b.Load.Standby || !slices.Contains(s.On, b.Load.Load) {
			continue
		}
		left := false
		for _, x := range c.bypasses(b) {
			if !x.parts && !slices.ContainsFunc(x.last, func(w *design.Switch) bool { return closes(s, w) }) {
				left = true
				for _, contact := range x.contacts {
					open[contact] = true
				}
			}
		}
		if !left {
			others = append(others, b)
		}
	}
	for i, on := range c.Needed(others...) {
		if on {
			delete(open, c.Branches[i])
		}
	}
	return open
}

// closes tells whether a situation names a switch, or a pole of it, as closed.
func closes(s *design.Situation, w *design.Switch) bool {
	return slices.ContainsFunc(s.Closed, func(o *design.Switch) bool { return o.Lead() == w })
}

// otherWays are situations like one in which a load is on, each with the switches of one of its bypasses the other way.
func (c *Circuit) otherWays(like *design.Situation, l *design.Load, load *Branch) (list []*design.Situation) {
	all := c.bypasses(load)
	if len(all) == 0 {
		return nil
	}
	closed := Contacts(c, like)
	for i, x := range all {
		if slices.ContainsFunc(all[:i], func(o bypass) bool { return slices.Equal(o.switches, x.switches) }) {
			continue
		}
		shut := func(w *design.Switch) bool {
			return slices.ContainsFunc(c.Branches, func(b *Branch) bool {
				return closed[b.Index] && b.Closer.Switch != nil && b.Closer.Output == "" && b.Closer.Switch.Lead() == w
			})
		}
		still := *like
		var names []string
		for _, w := range x.switches {
			names = append(names, w.Name)
		}
		still.Closed, still.Open = without(like.Closed, x.switches), without(like.Open, x.switches)
		if slices.ContainsFunc(x.switches, func(w *design.Switch) bool { return !shut(w) }) {
			still.Closed = append(still.Closed, x.switches...)
			still.Name += ", " + l.Name + " with " + wording.And(names) + " closed"
		} else {
			still.Open = append(still.Open, x.switches...)
			still.Name += ", " + l.Name + " with " + wording.And(names) + " open"
		}
		list = append(list, &still)
	}
	return list
}
