package schematic

import (
	"cmp"
	"math"
	"slices"
)

// spot is a point on the grid of a page, in modules.
type spot struct{ x, y int }

// line is the drawn way of one wire: from where it leaves the lines already
// there (or its source) to its end.
type line struct {
	net  *net
	in   *inlet
	pts  []spot
	dots []spot // where it joins others
}

// linesOf works out every line of a page. edges are the right edges of its
// columns.
func linesOf(nets []*net, edges []int) (list []line) {
	for _, n := range nets {
		var drawn []line
		start := n.from.y()
		for _, in := range slices.SortedStableFunc(slices.Values(n.inlets), func(a, b *inlet) int {
			return cmp.Compare(distance(a.y(), start), distance(b.y(), start))
		}) {
			drawn = append(drawn, line{net: n, in: in, pts: fromJoint(n.route(in, edges), drawn)})
		}
		markDots(drawn)
		list = append(list, drawn...)
	}
	joinInlets(list)
	return list
}

func distance(a, b int) int {
	if a > b {
		return a - b
	}
	return b - a
}

// route is the whole way from the outlet to an inlet.
func (n *net) route(in *inlet, edges []int) []spot {
	pts := []spot{{n.from.cell.x + n.from.dx, n.from.y()}}
	for _, h := range n.hops {
		to, last := h.target(in)
		if h.track > 0 {
			x := edges[h.col] + h.track
			pts = append(pts, spot{x, h.from.y()}, spot{x, to.y()})
		}
		if last {
			break
		}
	}
	pts = append(pts, spot{in.cell.x + in.dx, in.y()})
	return tidy(pts)
}

// target is where a hop goes on towards an inlet.
func (h *hop) target(in *inlet) (to end, last bool) {
	for _, e := range h.to {
		if e.in == in {
			return e, true
		}
	}
	for _, e := range h.to {
		if e.in == nil {
			return e, false
		}
	}
	return h.from, false
}

// tidy drops points that repeat or lie on a straight way.
func tidy(pts []spot) []spot {
	var out []spot
	for _, q := range pts {
		n := len(out)
		if n > 0 && out[n-1] == q {
			continue
		}
		if n > 1 && (out[n-2].x == out[n-1].x && out[n-1].x == q.x || out[n-2].y == out[n-1].y && out[n-1].y == q.y) {
			out[n-1] = q
			continue
		}
		out = append(out, q)
	}
	return out
}

// fromJoint shortens a way to the part that is not drawn yet: from its end back
// to the first point that lies on a drawn line.
func fromJoint(pts []spot, drawn []line) []spot {
	for i := len(pts) - 1; i > 0; i-- {
		a, b := pts[i], pts[i-1] // walking back from a to b
		best, found := b, false
		for _, l := range drawn {
			for k := 1; k < len(l.pts); k++ {
				if q, ok := meet(a, b, l.pts[k-1], l.pts[k]); ok && (!found || near(a, q, best)) {
					best, found = q, true
				}
			}
		}
		if found {
			return tidy(append([]spot{best}, pts[i:]...))
		}
	}
	return pts
}

// near tells whether q is closer to a than r, all on one line.
func near(a, q, r spot) bool {
	return distance(a.x, q.x)+distance(a.y, q.y) < distance(a.x, r.x)+distance(a.y, r.y)
}

// meet is the point nearest to a at which the upright or level line a–b meets
// the line c–d.
func meet(a, b, c, d spot) (spot, bool) {
	if a.y == b.y && c.y == d.y { // both level
		return overlap(a, b, c, d, a.y == c.y, true)
	}
	if a.x == b.x && c.x == d.x {
		return overlap(a, b, c, d, a.x == c.x, false)
	}
	q := spot{a.x, c.y}
	if a.y == b.y {
		q = spot{c.x, a.y}
	}
	return q, between(q, a, b) && between(q, c, d)
}

// overlap is the point of c–d nearest to a on the same line.
func overlap(a, b, c, d spot, same, level bool) (spot, bool) {
	if !same {
		return spot{}, false
	}
	best, found := spot{}, false
	for _, q := range []spot{a, c, d} {
		if between(q, a, b) && between(q, c, d) && (!found || near(a, q, best)) {
			best, found = q, true
		}
	}
	return best, found
}

// between tells whether q lies in the box of a and b.
func between(q, a, b spot) bool {
	return q.x >= min(a.x, b.x) && q.x <= max(a.x, b.x) && q.y >= min(a.y, b.y) && q.y <= max(a.y, b.y)
}

// markDots finds the joints of a net: points from which three or more lines go.
func markDots(drawn []line) {
	for i := range drawn {
		q := drawn[i].pts[0]
		if i > 0 && arms(q, drawn) > 2 {
			drawn[i].dots = append(drawn[i].dots, q)
		}
	}
}

// arms counts the directions in which lines leave a point.
func arms(q spot, drawn []line) int {
	seen := map[spot]bool{}
	for _, l := range drawn {
		for k := 1; k < len(l.pts); k++ {
			a, b := l.pts[k-1], l.pts[k]
			if !between(q, a, b) {
				continue
			}
			for _, e := range []spot{a, b} {
				if e != q {
					seen[spot{sign(e.x - q.x), sign(e.y - q.y)}] = true
				}
			}
		}
	}
	return len(seen)
}

func sign(v int) int { return max(-1, min(1, v)) }

// joinInlets leads further wires of one terminal up to the first.
func joinInlets(list []line) {
	for i := range list {
		l := &list[i]
		first := firstOf(l.in)
		if first == l.in {
			continue
		}
		x := l.in.cell.x - 1
		joint := spot{x, first.y()}
		l.pts[len(l.pts)-1].x = x
		l.pts = append(l.pts, joint)
		l.dots = append(l.dots, joint)
	}
}

// levelFrom is where the last level stretch of a line begins.
func (l line) levelFrom() int {
	n := len(l.pts)
	if n < 2 || l.pts[n-1].y != l.pts[n-2].y {
		return math.MaxInt
	}
	return l.pts[n-2].x
}
