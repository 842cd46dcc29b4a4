package formboard

import (
	"math"
	"sort"
)

// try is how much room and angle a layout keeps: the room as a share of the
// trunk's length, the angle between runs at a breakout in degrees.
type try struct{ room, angle float64 }

// tries go from roomy to crowded.
var tries = []try{{0.16, 30}, {0.1, 30}, {0.06, 30}, {0.06, 15}, {0.03, 15}, {0.01, 15}}

// lay gives every spot of the section its place.
func (s *Section) lay() {
	trunk := s.trunk()
	for _, t := range tries {
		if newSearch(s, trunk, t).run() {
			s.Even = true
			s.settle(trunk)
			return
		}
	}
	s.fan()
	s.settle(trunk)
}

// settle moves the section's upper left corner to the origin and puts the trunk
// in front.
func (s *Section) settle(trunk []*Spot) {
	left, top := math.Inf(1), math.Inf(1)
	for _, p := range s.Spots {
		left, top = math.Min(left, p.At.X), math.Min(top, p.At.Y)
	}
	for _, p := range s.Spots {
		p.At.X, p.At.Y = p.At.X-left, p.At.Y-top
	}
	rank := map[*Limb]int{}
	for i := 1; i < len(trunk); i++ {
		l := between(trunk[i-1], trunk[i])
		l.Trunk = true
		rank[l] = i - len(trunk)
	}
	sort.SliceStable(s.Limbs, func(i, j int) bool { return rank[s.Limbs[i]] < rank[s.Limbs[j]] })
}

// Size is the rectangle round the section in millimetres.
func (s *Section) Size() (wide, high float64) {
	for _, p := range s.Spots {
		wide, high = math.Max(wide, p.At.X), math.Max(high, p.At.Y)
	}
	return wide, high
}

// trunk is the way through the section with the most wire in it (length times
// wires); of equal ones the longer, then the one found first. It begins at the
// end nearer the source.
func (s *Section) trunk() []*Spot {
	var best []*Spot
	var most, longest float64
	for _, a := range s.Spots {
		for _, b := range s.Spots[a.index+1:] {
			way := route(a, b)
			wire, length := 0.0, 0.0
			for i := 1; i < len(way); i++ {
				r := between(way[i-1], way[i]).Run
				wire += r.Length * float64(len(r.Bundle.Wires))
				length += r.Length
			}
			if wire > most+1e-6 || wire > most-1e-6 && length > longest+1e-6 {
				best, most, longest = way, wire, length
			}
		}
	}
	root := s.Spots[0]
	if length(route(root, best[0])) > length(route(root, best[len(best)-1]))+1e-6 {
		for i, j := 0, len(best)-1; i < j; i, j = i+1, j-1 {
			best[i], best[j] = best[j], best[i]
		}
	}
	return best
}

// route is the only way between two spots of a tree: up from both towards the root.
func route(a, b *Spot) []*Spot {
	up := func(s *Spot) []*Spot {
		out := []*Spot{s}
		for l := s.inward(); l != nil; l = s.inward() {
			s = l.near
			out = append(out, s)
		}
		return out
	}
	from, to := up(a), up(b)
	for len(from) > 1 && len(to) > 1 && from[len(from)-2] == to[len(to)-2] {
		from, to = from[:len(from)-1], to[:len(to)-1]
	}
	for i := len(to) - 2; i >= 0; i-- {
		from = append(from, to[i])
	}
	return from
}

// inward is the limb towards the root; nil at the root.
func (s *Spot) inward() *Limb {
	for _, l := range s.Limbs {
		if l.far == s {
			return l
		}
	}
	return nil
}

func between(a, b *Spot) *Limb {
	for _, l := range a.Limbs {
		if l.Far(a) == b {
			return l
		}
	}
	return nil
}

func length(way []*Spot) float64 {
	sum := 0.0
	for i := 1; i < len(way); i++ {
		sum += between(way[i-1], way[i]).Run.Length
	}
	return sum
}
