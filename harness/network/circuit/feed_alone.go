package circuit

import (
	"cmp"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
)

// Alone are situations beside the design's: each load that several switches feed, on by one
// of them alone, the others open. With all closed each feed carries but a share, and what
// one loses would not show. So in each position of a switch that feeds it through a resistor or past it, and with the switch that bypasses a resistor the other way, both with the engine running too. Each is as the situation with the key on that has most on beside
// the load, else as one with the key off; none where no load has several such feeds.
func (c *Circuit) Alone() (list []*design.Situation) {
	if c.Design == nil {
		return nil
	}
	for _, p := range c.Parts {
		l, ok := p.Source.(*design.Load)
		if !ok {
			continue
		}
		like := likeAlone(c.Design.Situations, l, func(s *design.Situation) bool { return s.Key == design.KeyOn })
		if like == nil {
			continue
		}
		for _, b := range p.Branches {
			if b.Load != nil && !b.Load.Standby {
				list = append(list, c.OtherPositions(like, l, b)...)
				list = append(list, c.otherWays(like, l, b)...)
				if runs := likeAlone(c.Design.Situations, l, Running); runs != like { // at its volts a resistor makes most heat
					list = append(list, c.OtherPositions(runs, l, b)...)
					list = append(list, c.otherWays(runs, l, b)...)
				}
			}
		}
		sets := c.FeedSwitches(p)
		if len(sets) < 2 {
			continue
		}
		for _, set := range sets {
			s := Only(like, sets, set)
			var names []string
			for _, x := range set {
				names = append(names, x.Name)
			}
			s.Name += ", " + l.Name + " through " + wording.And(names) + " alone"
			list = append(list, s)
		}
	}
	return list
}

// likeAlone is the situation that a load's feeds are tried in, one of those first that are first; nil = it is on in none.
func likeAlone(all []*design.Situation, l *design.Load, first func(*design.Situation) bool) (like *design.Situation) {
	rank := func(s *design.Situation) int {
		if first(s) {
			return 1
		}
		return 0
	}
	for _, s := range all {
		if slices.Contains(s.On, l) && (like == nil || cmp.Or(cmp.Compare(rank(s), rank(like)), cmp.Compare(len(s.On), len(like.On))) > 0) {
			like = s
		}
	}
	return like
}

// Only is a situation with one of several sets of switches closed, and the rest of them open.
func Only(s *design.Situation, sets [][]*design.Switch, set []*design.Switch) *design.Situation {
	still := *s
	still.Open = without(slices.Concat(sets...), set)
	still.Closed = append(without(still.Closed, still.Open), set...)
	return &still
}

// FeedSwitches are the switches on each way to a load, each set once; a way with every
// switch of another and more is none of its own, nor is one without a switch.
func (c *Circuit) FeedSwitches(p *Part) (sets [][]*design.Switch) {
	plus := p.Terminal("+")
	if plus == nil {
		return nil
	}
	paths, _ := c.FeedPaths(plus.Node)
	if len(paths) < 2 {
		return nil
	}
	var met [][]*design.Switch
	for _, path := range paths {
		var set []*design.Switch
		for _, b := range path.Branches {
			if b.Closer != nil && b.Closer.Switch != nil {
				set = append(set, b.Closer.Switch)
			}
		}
		met = append(met, set)
	}
	for i, set := range met {
		covered := slices.IndexFunc(met, func(o []*design.Switch) bool { return len(without(o, set)) == 0 })
		if len(set) > 0 && covered == i {
			sets = append(sets, set)
		}
	}
	return sets
}

func without(list, gone []*design.Switch) []*design.Switch {
	return slices.DeleteFunc(slices.Clone(list), func(x *design.Switch) bool { return slices.Contains(gone, x) })
}

// idleShare is the share of the greatest current into a node below which a feed of it
// carries nothing: what leaks over an open contact.
const idleShare = 0.01

// FeedIn is the first of the feed paths of a node that carries, by the currents given by
// branch; the main feed where none does.
func (c *Circuit) FeedIn(to *Node, amps []float64) Path {
	return c.follow(to, c.IsPost, func(n *Node) []*Branch {
		if len(n.fedBy) < 2 {
			return n.fedBy
		}
		most := 0.0
		for _, b := range n.fedBy {
			most = math.Max(most, math.Abs(amps[b.Index]))
		}
		idle := func(b *Branch) bool { return math.Abs(amps[b.Index]) <= idleShare*most }
		carrying := slices.DeleteFunc(slices.Clone(n.fedBy), idle)
		return append(carrying, slices.DeleteFunc(slices.Clone(n.fedBy), func(b *Branch) bool { return !idle(b) })...)
	}, func(b *Branch) *Node { return b.A }, true)
}

// WaysIn are the feed that carries, by the currents given by branch, and the main return
// of a part; none without terminals.
func (c *Circuit) WaysIn(part *Part, amps []float64) []Path {
	plus, minus := part.Terminal("+"), part.Terminal("-")
	if plus == nil || minus == nil {
		return nil
	}
	return []Path{c.FeedIn(plus.Node, amps), c.MainReturn(minus.Node, c.Home(plus.Node))}
}

// WayConductors are the wires of WaysIn and the lead that the part comes with, by the
// currents; the way is followed once where no feeds are parallel.
func (c *Circuit) WayConductors(part *Part) func(amps []float64) []*Branch {
	in := func(amps []float64) (list []*Branch) {
		for _, way := range c.WaysIn(part, amps) {
			for _, w := range way.Wires() {
				list = append(list, w.Branch)
			}
		}
		return append(list, part.Leads()...)
	}
	if ways := c.Ways(part); len(ways) > 0 && slices.ContainsFunc(ways[0].Branches, func(b *Branch) bool { return len(b.B.fedBy) > 1 }) {
		return in
	}
	one := in(nil)
	return func([]float64) []*Branch { return one }
}
