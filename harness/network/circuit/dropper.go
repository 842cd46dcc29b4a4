package circuit

import (
	"slices"

	"fusewright/harness/design"
)

// ResistorSpare is how many times the heat that it makes a resistor is bought for, which else is too
// hot to touch (common practice, no source).
const ResistorSpare = 2.0

// Dropper tells of a resistor that stands in a feed or return as a part of its own.
func (b *Branch) Dropper() bool { return b.Part != nil && b.Part.Kind == Resistor }

// heldBack tells whether every way to a load, or every way back, that some contacts leave leads
// over a resistor.
func (c *Circuit) heldBack(load *Branch, passes func(*Branch) bool) bool {
	if len(c.Design.Resistors) == 0 {
		return false
	}
	over := func(paths []Path) bool {
		paths = slices.DeleteFunc(paths, func(p Path) bool {
			return slices.ContainsFunc(p.Branches, func(b *Branch) bool { return !passes(b) })
		})
		return len(paths) > 0 && !slices.ContainsFunc(paths, func(p Path) bool { return !slices.ContainsFunc(p.Branches, (*Branch).Dropper) })
	}
	feeds, _ := c.FeedPaths(load.A)
	returns, _ := c.ReturnPaths(load.B)
	return over(feeds) || over(returns)
}

// at tells of contacts whether a position of a switch closes them; those of others count as closed.
func at(sw *design.Switch, position string) func(*Branch) bool {
	return func(b *Branch) bool {
		k := b.Closer
		return k == nil || k.Switch == nil || k.Switch.Lead() != sw || k.Switch.Gives(position, k.Output)
	}
}

// OtherPositions are situations like one in which a load is on, in the other positions of a switch that
// give it too, where a resistor holds it back in some.
func (c *Circuit) OtherPositions(like *design.Situation, l *design.Load, load *Branch) (list []*design.Situation) {
	if len(c.Design.Resistors) == 0 {
		return nil
	}
	now, _ := Positions(c, like)
	for _, sw := range c.handles() {
		var others []string
		held := c.heldBack(load, at(sw, now[sw]))
		for _, p := range sw.Positions {
			gives := c.given(like, nil, func(b *Branch) bool { return at(sw, p.Name)(b) })
			if p.Name == now[sw] || !gives.draws(load) || c.given(like, nil, func(b *Branch) bool { return b.Closer.Switch.Lead() != sw }).draws(load) {
				continue
			}
			held = held || c.heldBack(load, at(sw, p.Name))
			others = append(others, p.Name)
		}
		for _, name := range others {
			if !held {
				break
			}
			still, set := *like, design.Setting{Switch: sw, Position: name}
			still.Set = append(slices.DeleteFunc(slices.Clone(still.Set), func(o design.Setting) bool { return o.Switch == sw }), set)
			still.Name += ", " + l.Name + " with " + set.String()
			if slices.ContainsFunc(like.Set, func(o design.Setting) bool { return o.Switch == sw }) {
				still.Name += " in place of " + now[sw]
			}
			list = append(list, &still)
		}
	}
	return list
}
