package schematic

import "sort"

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

// traceLines works out every line of a page from columns, rows and tracks.
func (p *page) traceLines() {
	p.lines = nil
	for _, n := range p.nets {
		var drawn []line
		inlets := append([]*inlet{}, n.inlets...)
		start := n.from.y()
		sort.SliceStable(inlets, func(i, j int) bool {
			return distance(inlets[i].y(), start) < distance(inlets[j].y(), start)
		})
		for _, in := range inlets {
			l := line{net: n, in: in, pts: p.route(n, in)}
			l.pts = fromJoint(l.pts, drawn)
			drawn = append(drawn, l)
		}
		markDots(drawn)
		p.lines = append(p.lines, drawn...)
	}
	p.joinInlets()
}

func distance(a, b int) int {
	if a > b {
		return a - b
	}
	return b - a
}

// route is the whole way from the outlet to an inlet.
func (p *page) route(n *net, in *inlet) []spot {
	pts := []spot{{n.from.cell.x + n.from.dx, n.from.y()}}
	for _, h := range n.hops {
		to, last := h.target(in)
		if h.track > 0 {
			x := p.columnX[h.col] + p.widths[h.col] + h.track
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
func (p *page) joinInlets() {
	for i := range p.lines {
		l := &p.lines[i]
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

// firstOf is the first inlet of the same terminal; blocks join at their bar and
// plugs behind their poles.
func firstOf(in *inlet) *inlet {
	c := in.cell
	if c.kind != partCell || len(c.ways) > 0 || c.plugged() {
		return in
	}
	for _, q := range c.inlets {
		if q.term == in.term {
			return q
		}
	}
	return in
}
