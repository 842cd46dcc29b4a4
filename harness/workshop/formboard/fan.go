package formboard

import "math"

// fan lays a section that finds no room at even angles: every spot has a cone
// of directions of its own, its limbs share it by their number of tips, and
// whatever hangs on a limb stays inside the limb's part of the cone moved to
// its tip. Cones that are parts of one another never meet again, so that nothing
// crosses, however crowded it is.
func (s *Section) fan() {
	tips := map[*Spot]int{}
	var count func(at *Spot) int
	count = func(at *Spot) int {
		n := 0
		for _, l := range at.Limbs {
			if l.near == at {
				n += count(l.far)
			}
		}
		tips[at] = max(n, 1)
		return tips[at]
	}
	root := s.Spots[0]
	count(root)
	root.At = Point{}
	var spread func(at *Spot, from, to float64)
	spread = func(at *Spot, from, to float64) {
		total := tips[at]
		for _, l := range at.Limbs {
			if l.near != at {
				continue
			}
			wide := (to - from) * float64(tips[l.far]) / float64(total)
			total -= tips[l.far]
			l.point(at, from+wide/2)
			// A cone of a half turn or more would reach back over its base.
			half := math.Min(wide/2, 60)
			spread(l.far, from+wide/2-half, from+wide/2+half)
			from += wide
		}
	}
	spread(root, -180, 180)
}
