package route

import (
	"cmp"
	"math"
	"slices"

	"fusewright/render/schematic/cell"
)

// Spot is a point on the grid of a page, in modules.
type Spot struct{ X, Y int }

// Line is the drawn way of one wire: from where it leaves the lines already
// there (or its source) to its end.
type Line struct {
	Net  *Net
	In   *cell.Inlet
	Pts  []Spot
	Dots []Spot // where it joins others
	// Whole is its way from the source on, what it shares with others too.
	Whole []Spot
}

// Lines works out every line of a page. edges are the right edges of its
// columns.
func Lines(nets []*Net, edges []int) (list []Line) {
	for _, n := range nets {
		var drawn []Line
		start := n.From.Y()
		for _, in := range slices.SortedStableFunc(slices.Values(n.Inlets), func(a, b *cell.Inlet) int {
			return cmp.Compare(Distance(a.Y(), start), Distance(b.Y(), start))
		}) {
			if in.Cell.Empty {
				continue
			}
			whole := n.route(in, edges)
			drawn = append(drawn, Line{Net: n, In: in, Pts: fromJoint(slices.Clone(whole), drawn), Whole: whole})
		}
		markDots(drawn)
		list = append(list, drawn...)
	}
	joinInlets(list)
	return list
}

func Distance(a, b int) int {
	if a > b {
		return a - b
	}
	return b - a
}

// route is the whole way from the outlet to an inlet.
func (n *Net) route(in *cell.Inlet, edges []int) []Spot {
	pts := []Spot{{n.From.Cell.X + n.From.Dx, n.From.Y()}}
	for _, h := range n.Hops {
		to, last := h.target(in)
		if h.track > 0 {
			x := edges[h.Col] + h.track
			pts = append(pts, Spot{x, h.From.y()}, Spot{x, to.y()})
		}
		if last {
			break
		}
	}
	pts = append(pts, Spot{in.Cell.X + in.Dx, in.Y()})
	return Tidy(pts)
}

// target is where a hop goes on towards an inlet.
func (h *hop) target(in *cell.Inlet) (to End, last bool) {
	for _, e := range h.To {
		if e.In == in {
			return e, true
		}
	}
	for _, e := range h.To {
		if e.In == nil {
			return e, false
		}
	}
	return h.From, false
}

// Tidy drops points that repeat or lie on a straight way.
func Tidy(pts []Spot) []Spot {
	var out []Spot
	for _, q := range pts {
		n := len(out)
		if n > 0 && out[n-1] == q {
			continue
		}
		if n > 1 && (out[n-2].X == out[n-1].X && out[n-1].X == q.X || out[n-2].Y == out[n-1].Y && out[n-1].Y == q.Y) {
			out[n-1] = q
			continue
		}
		out = append(out, q)
	}
	return out
}

// fromJoint shortens a way to the part that is not drawn yet: from its end back
// to the first point that lies on a drawn line.
func fromJoint(pts []Spot, drawn []Line) []Spot {
	for i := len(pts) - 1; i > 0; i-- {
		a, b := pts[i], pts[i-1] // walking back from a to b
		best, found := b, false
		for _, l := range drawn {
			for k := 1; k < len(l.Pts); k++ {
				if q, ok := meet(a, b, l.Pts[k-1], l.Pts[k]); ok && (!found || near(a, q, best)) {
					best, found = q, true
				}
			}
		}
		if found {
			return Tidy(append([]Spot{best}, pts[i:]...))
		}
	}
	return pts
}

// near tells whether q is closer to a than r, all on one line.
func near(a, q, r Spot) bool {
	return Distance(a.X, q.X)+Distance(a.Y, q.Y) < Distance(a.X, r.X)+Distance(a.Y, r.Y)
}

// meet is the point nearest to a that the upright or level lines a–b and c–d
// have in common.
func meet(a, b, c, d Spot) (Spot, bool) {
	low := Spot{max(min(a.X, b.X), min(c.X, d.X)), max(min(a.Y, b.Y), min(c.Y, d.Y))}
	high := Spot{min(max(a.X, b.X), max(c.X, d.X)), min(max(a.Y, b.Y), max(c.Y, d.Y))}
	q := Spot{max(low.X, min(a.X, high.X)), max(low.Y, min(a.Y, high.Y))}
	return q, low.X <= high.X && low.Y <= high.Y
}

// Between tells whether q lies in the box of a and b.
func Between(q, a, b Spot) bool {
	return q.X >= min(a.X, b.X) && q.X <= max(a.X, b.X) && q.Y >= min(a.Y, b.Y) && q.Y <= max(a.Y, b.Y)
}

// markDots finds the joints of a net: points from which three or more lines go.
func markDots(drawn []Line) {
	for i := range drawn {
		q := drawn[i].Pts[0]
		if i > 0 && arms(q, drawn) > 2 {
			drawn[i].Dots = append(drawn[i].Dots, q)
		}
	}
}

// arms counts the directions in which lines leave a point.
func arms(q Spot, drawn []Line) int {
	seen := map[Spot]bool{}
	for _, l := range drawn {
		for k := 1; k < len(l.Pts); k++ {
			a, b := l.Pts[k-1], l.Pts[k]
			if !Between(q, a, b) {
				continue
			}
			for _, e := range []Spot{a, b} {
				if e != q {
					seen[Spot{cmp.Compare(e.X, q.X), cmp.Compare(e.Y, q.Y)}] = true
				}
			}
		}
	}
	return len(seen)
}

// joinInlets leads further wires of one terminal up to the first.
func joinInlets(list []Line) {
	for i := range list {
		l := &list[i]
		first := cell.FirstOf(l.In)
		if first == l.In {
			continue
		}
		x := l.In.Cell.X - 1
		joint := Spot{x, first.Y()}
		l.Pts[len(l.Pts)-1].X = x
		l.Pts = append(l.Pts, joint)
		l.Whole[len(l.Whole)-1].X = x
		l.Whole = append(l.Whole, joint)
		l.Dots = append(l.Dots, joint)
	}
}

// LevelFrom is where the last level stretch of a line begins.
func (l Line) LevelFrom() int {
	n := len(l.Pts)
	if n < 2 || l.Pts[n-1].Y != l.Pts[n-2].Y {
		return math.MaxInt
	}
	return l.Pts[n-2].X
}
