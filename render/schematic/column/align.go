package column

import (
	"math"
	"slices"
)

// Align moves lists down so that as many columns as can be begin level.
func Align(slots []*Slot) {
	groups := linked(slots)
	var tops []float64
	for _, g := range groups {
		tops = append(tops, g.top)
	}
	slices.Sort(tops)
	best, most := 0.0, 1
	for _, top := range tops {
		n := 0
		for _, g := range groups {
			if g.top <= top && g.top+g.slack >= top {
				n++
			}
		}
		if n > most {
			best, most = top, n
		}
	}
	for _, g := range groups {
		if g.top < best && g.top+g.slack >= best {
			g.move(best - g.top)
		}
	}
}

// group is slots joined by lists in several columns.
type group struct {
	slots      []*Slot
	top, slack float64
}

// linked are the slots that hold lists, those under one wide list together.
func linked(slots []*Slot) (groups []*group) {
	for _, s := range slots {
		if len(s.lists) == 0 {
			continue
		}
		var g *group
		for _, other := range groups {
			if other.shares(s) {
				g = other
			}
		}
		if g == nil {
			g = &group{slack: math.Inf(1), top: s.lists[0].area.Y}
			groups = append(groups, g)
		}
		g.slots = append(g.slots, s)
		g.top = min(g.top, s.lists[0].area.Y)
		g.slack = min(g.slack, s.bottom-(s.y-Gap))
	}
	return groups
}

func (g *group) shares(s *Slot) bool {
	return slices.ContainsFunc(g.slots, func(other *Slot) bool {
		return slices.ContainsFunc(other.lists, func(p *List) bool { return slices.Contains(s.lists, p) })
	})
}

func (g *group) move(down float64) {
	seen := map[*List]bool{}
	for _, s := range g.slots {
		for _, p := range s.lists {
			if !seen[p] {
				p.area.Y += down
				seen[p] = true
			}
		}
		s.y += down
	}
}
