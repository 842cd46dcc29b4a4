package circuit

// FuseDistanceM is the longest conductor without a fuse allowed from the source
// that a wire starts at, and whether the design sets it; else it is the practice's.
func (c *Circuit) FuseDistanceM(w *Wire) (m float64, given bool) {
	if q := c.Design.Limits.FuseDistanceM; q.Given() {
		return q.Value, true
	}
	return c.practiceDistanceM(w), false
}

// practiceDistanceM is the same by the practice alone.
func (c *Circuit) practiceDistanceM(w *Wire) float64 {
	switch p := c.Design.Practice; {
	case p == nil:
		return 0
	case w.Spec.Sheathed:
		return p.FuseDistanceSheathedM
	default:
		return p.FuseDistanceM
	}
}

// Tail tells whether a feed leads to fuses alone, no further from where it starts
// than the practice lets a fuse be from its source: the fuses at its far end bound what
// it carries. A longer distance that the design allows from the battery makes no tails.
func (c *Circuit) Tail(w *Wire) bool {
	if w.Role.Returns() || !w.Branch.Feeds() {
		return false
	}
	fuses := 0
	ahead, toward := w.To.Node, func(b *Branch) bool { return b.A == w.To.Node }
	if c.IsPost(w.To.Node) { // from a further battery the fuse of its link lies towards what charges it
		ahead, toward = w.From.Node, func(b *Branch) bool { return b.B == w.From.Node }
	}
	for _, b := range ahead.Branches {
		if toward(b) {
			if b.Kind != FuseBranch {
				return false
			}
			fuses++
		}
	}
	most, _ := c.FuseDistanceM(w)
	return fuses > 0 && w.LengthM <= min(most, c.practiceDistanceM(w))*(1+1e-9)
}
