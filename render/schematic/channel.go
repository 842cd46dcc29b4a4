package schematic

// channel is the wires between two columns. Each net that changes rows gets one
// vertical line on a track; tracks are numbered from the left.
type channel struct {
	hops   []*hop
	tracks int
}

// span is the rows of a hop's vertical line.
func (h *hop) span() (low, high int) {
	low, high = h.from.y(), h.from.y()
	for _, to := range h.to {
		low, high = min(low, to.y()), max(high, to.y())
	}
	return low, high
}

func (h *hop) straight() bool {
	low, high := h.span()
	return low == high
}

// route chooses the tracks from left to right. A net whose line comes from the
// left on a row where another goes on to the right must turn first.
func (c *channel) route() (stuck *inlet) {
	var open []*hop
	for _, h := range c.hops {
		h.track = 0
		if !h.straight() {
			open = append(open, h)
		}
	}
	taken := map[int][]*hop{}
	c.tracks = 0
	for len(open) > 0 {
		best := -1
		bestCost := 0
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
		h.track = firstTrack(h, taken, c.hops)
		taken[h.track] = append(taken[h.track], h)
		c.tracks = max(c.tracks, h.track)
	}
	return nil
}

// free tells that no open net has to turn before this one.
func free(h *hop, open []*hop) bool {
	for _, q := range open {
		if q != h && mustPrecede(q, h) {
			return false
		}
	}
	return true
}

// mustPrecede tells whether a's line from the left lies on a row where b goes
// on to the right, so that a must turn further left.
func mustPrecede(a, b *hop) bool {
	for _, to := range b.to {
		if to.y() == a.from.y() {
			return true
		}
	}
	return false
}

// crossings counts where a on a track left of b crosses b.
func crossings(a, b *hop) int {
	n := 0
	low, high := a.span()
	if y := b.from.y(); y > low && y < high {
		n++
	}
	low, high = b.span()
	for _, to := range a.to {
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
func stuckInlet(open []*hop) *inlet {
	for _, h := range open {
		if free(h, open) {
			continue
		}
		for _, in := range h.net.inlets {
			if in.cell.kind == partCell {
				return in
			}
		}
	}
	return nil
}
