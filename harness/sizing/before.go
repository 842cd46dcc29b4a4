package sizing

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// beforeFuses makes no wire before a fuse, a switch, a contact or a bus thinner than what
// follows there, nor a wire that brings the current of several back thinner than theirs,
// where the ends take it and nothing goes wrong by it: a fitter goes on in one size or thinner.
func (s *search) beforeFuses() {
	w := s.look(s.best.verdict)
	s.take(s.best)
	for again := true; again; { // all at once, what raises another wire included
		again = false
		for i := range s.slots {
			again = w.follow(i) || again
		}
	}
	if s.chosen(s.best) || s.followed() {
		return
	}
	for i := range s.slots {
		if s.take(s.best); w.follow(i) {
			s.followed()
		}
	}
	s.take(s.best)
}

// follow makes the wires of a slot as thick as what follows them, as far as their ends
// take it; true when they were thinner.
func (w *view) follow(i int) bool {
	x := w.s.slots[i]
	if x.kind != WireSize {
		return false
	}
	was, follows := x.at, w.followingMm2(i)
	for z := was; z < len(x.sizes) && x.sizes[x.at].AreaMm2 < follows*0.999; z++ {
		if w.crimpsAll(i, z) {
			x.set(z)
		}
	}
	return x.at != was
}

// followed keeps the present choices unless more goes wrong than in the best; false when it does.
func (s *search) followed() bool {
	a, err := s.answer()
	if err != nil || s.best.verdict.score.less(a.verdict.score) {
		return false
	}
	for i, at := range a.at {
		s.follows[i] = s.follows[i] || at != s.best.at[i]
	}
	s.best = a
	return true
}

// trunkMm2 is the least of a wire that feeds a block, or brings the current of a ground block back:
// a fitter makes the trunk of several circuits no thinner, since more comes to hang on it (common
// practice, no source).
const trunkMm2 = 1.5

// followingMm2 is the thickest wire that hangs on the parts that the wires of a slot lead
// to, or comes back to those they come from, but for those of coils; of a trunk trunkMm2 at least.
func (w *view) followingMm2(i int) (mm2 float64) {
	at := w.present()
	for _, x := range w.wires[i] {
		if x.Role != circuit.FeedWire && x.Role != circuit.ReturnWire {
			continue
		}
		if len(w.v.c.ChargersAbove(x.From.Node)) > 0 {
			mm2 = max(mm2, w.chargerMm2(x, at))
			continue
		}
		if w.gathers(behindOf(x)) {
			mm2 = max(mm2, trunkMm2)
		}
		for _, y := range w.wiresAt(behindOf(x)) {
			if y.Role == x.Role && y != x && behindOf(y) != behindOf(x) {
				mm2 = max(mm2, w.sizeWith(y, at).AreaMm2)
			}
		}
	}
	return mm2
}

// chargerMm2 is the thickest wire that follows one behind chargers as a short sees it: from the battery
// they charge on towards them.
func (w *view) chargerMm2(x *circuit.Wire, at []int) (mm2 float64) {
	for _, y := range w.wiresAt(x.From.Part) {
		if y.Role == circuit.FeedWire && y.To.Part == x.From.Part && x.From.Part.Output() == nil {
			mm2 = max(mm2, w.sizeWith(y, at).AreaMm2)
		}
	}
	return mm2
}

// gathers tells whether a part shares out what its wire brings, or gathers it.
func (w *view) gathers(p *circuit.Part) bool {
	switch p.Source.(type) {
	case *design.Block, *design.Ground:
		return len(w.wiresAt(p)) > 2
	}
	return false
}

// behindOf is the part at the end of a wire that is further from the battery.
func behindOf(x *circuit.Wire) *circuit.Part {
	if x.Role.Returns() {
		return x.From.Part
	}
	return x.To.Part
}
