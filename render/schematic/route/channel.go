package route

import (
	"fusewright/render/schematic/cell"
	"slices"
)

// Channel is the wires between two columns. Each net that changes rows gets one
// vertical line on a track; tracks are numbered from the left.
type Channel struct {
	Hops   []*hop
	Tracks int
}

// span is the rows of a hop's vertical line.
func (h *hop) span() (low, high int) {
	low, high = h.From.y(), h.From.y()
	for _, to := range h.To {
		low, high = min(low, to.y()), max(high, to.y())
	}
	return low, high
}

func (h *hop) straight() bool {
	low, high := h.span()
	return low == high
}

// Route chooses the tracks from left to right. A net whose line comes from the
// left on a row where another goes on to the right must turn first.
func (c *Channel) Route() (stuck *cell.Inlet) {
	var open []*hop
	for _, h := range c.Hops {
		h.track = 0
		if !h.straight() {
			open = append(open, h)
		}
	}
	taken := map[int][]*hop{}
	c.Tracks = 0
	for len(open) > 0 {
		best, bestCost := -1, 0
		for i, h := range open {
			if !free(h, open) {
				continue
			}
			cost := 0
			for _, q := range open {
				if q != h {
					cost += crossings(h, q) - crossings(q, h)
				}
			}
			if best < 0 || cost < bestCost {
				best, bestCost = i, cost
			}
		}
		if best < 0 {
			return stuckInlet(open)
		}
		h := open[best]
		open = append(open[:best:best], open[best+1:]...)
		h.track = firstTrack(h, taken, c.Hops)
		taken[h.track] = append(taken[h.track], h)
		c.Tracks = max(c.Tracks, h.track)
	}
	return nil
}

// free tells that no open net has to turn before this one.
func free(h *hop, open []*hop) bool {
	return !slices.ContainsFunc(open, func(q *hop) bool { return q != h && mustPrecede(q, h) })
}

// mustPrecede tells whether a's line from the left lies on a row where b goes
// on to the right, so that a must turn further left.
func mustPrecede(a, b *hop) bool {
	return slices.ContainsFunc(b.To, func(to End) bool { return to.y() == a.From.y() })
}

// crossings counts where a on a track left of b crosses b.
func crossings(a, b *hop) int {
	n := 0
	low, high := a.span()
	if y := b.From.y(); y > low && y < high {
		n++
	}
	low, high = b.span()
	for _, to := range a.To {
		if y := to.y(); y > low && y < high {
			n++
		}
	}
	return n
}

// firstTrack is the leftmost track right of all that must precede, on which the
// line meets no other.
func firstTrack(h *hop, taken map[int][]*hop, all []*hop) int {
	track := 1
	for _, q := range all {
		if q != h && q.track > 0 && (mustPrecede(q, h) || crossings(q, h) < crossings(h, q)) {
			track = max(track, q.track+1)
		}
	}
	for ; ; track++ {
		clear := true
		for _, q := range taken[track] {
			low, high := h.span()
			qLow, qHigh := q.span()
			if low <= qHigh && qLow <= high {
				clear = false
			}
		}
		if clear {
			return track
		}
	}
}

// stuckInlet picks a wire of the nets that block each other.
func stuckInlet(open []*hop) *cell.Inlet {
	for _, h := range open {
		if free(h, open) {
			continue
		}
		for _, in := range h.net.Inlets {
			if in.Cell.Kind == cell.Part {
				return in
			}
		}
	}
	return nil
}
