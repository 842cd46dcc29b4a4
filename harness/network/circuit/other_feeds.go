package circuit

import (
	"slices"

	"fusewright/harness/design"
)

// otherFeeds are the branches on feeds of loads that are on in a situation which has the last
// switch of another feed closed, `closed: [float]`, and not theirs: which feed is meant is said,
// and the others stay open. What another load needs is not among them. nil = none.
func (c *Circuit) otherFeeds(s *design.Situation) (shut map[*Branch]bool) {
	if len(s.Closed) == 0 {
		return nil
	}
	var kept []*Node
	meant := map[*Branch]bool{}
	for _, b := range c.Branches {
		if b.Load == nil || b.Load.Load == nil || b.Load.Standby || !slices.Contains(s.On, b.Load.Load) {
			continue
		}
		named, others := c.feedsNamed(b.A, s)
		if len(named) == 0 || len(others) == 0 {
			kept = append(kept, b.A)
			continue
		}
		for _, x := range slices.Concat(named...) {
			meant[x] = true
		}
		for _, x := range slices.Concat(others...) {
			if shut == nil {
				shut = map[*Branch]bool{}
			}
			shut[x] = true
		}
	}
	if shut == nil {
		return nil
	}
	for i, on := range c.Feeding(kept...) {
		if b := c.Branches[i]; on || meant[b] {
			delete(shut, b)
		}
	}
	return shut
}

// feedsNamed parts the feeds of a node into those whose last switch a situation closes, and
// the rest; one that a position which the situation says leaves open is of the rest.
func (c *Circuit) feedsNamed(n *Node, s *design.Situation) (named, others [][]*Branch) {
	paths, _ := c.FeedPaths(n)
	for _, p := range paths {
		if slices.ContainsFunc(c.lastSwitches(p, 0), func(x *design.Switch) bool { return closes(s, x) }) && !slices.ContainsFunc(p.Branches, func(b *Branch) bool { return leavesOpen(b, s) }) {
			named = append(named, p.Branches)
		} else {
			others = append(others, p.Branches)
		}
	}
	return named, others
}

// leavesOpen tells whether a position that a situation says leaves a contact open.
func leavesOpen(b *Branch, s *design.Situation) bool {
	return b.Closer != nil && b.Closer.Output != "" && slices.ContainsFunc(s.Set, func(set design.Setting) bool {
		return set.Switch == b.Closer.Switch.Lead() && !b.Closer.Switch.Gives(set.Position, b.Closer.Output)
	})
}

// lastSwitches are the switches nearest to what a way feeds; where a relay is nearer, those
// nearest to its coil.
func (c *Circuit) lastSwitches(p Path, depth int) (list []*design.Switch) {
	for _, b := range slices.Backward(p.Branches) {
		switch k := b.Closer; {
		case k == nil:
		case k.Switch != nil:
			return []*design.Switch{k.Switch.Lead()}
		case k.Coil != nil && depth < deepestRelay:
			paths, _ := c.FeedPaths(k.Coil.A)
			for _, coil := range paths {
				list = append(list, c.lastSwitches(coil, depth+1)...)
			}
			return list
		}
	}
	return nil
}

// deepestRelay is how many relays in a row, coil behind contact, are looked through.
const deepestRelay = 3
