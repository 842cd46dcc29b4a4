package sizing

import "slices"

// maxTrims is how often trim goes over what was raised.
const maxTrims = 8

// trim takes back what a lesson raised in vain: each raised candidate is put
// one lower and judged, and those in which nothing new goes wrong stay so. Of
// small designs all wires and fuses are looked at, wires in every thinner size
// that is cheaper.
func (s *search) trim() {
	for range maxTrims {
		var moves []move
		for i, x := range s.slots {
			all := len(s.slots) <= maxPolished && (x.kind == WireSize || x.kind == Fuse)
			if m := (move{i, s.best.at[i] - 1}); (s.raised[i] || all) && m.to >= 0 {
				moves = append(moves, m)
			}
		}
		t := s.trying(moves)
		t.brief = true
		t.moves = slices.DeleteFunc(moves, t.idle)
		trials := t.each()
		s.secondBest(t.moves, trials)
		var good []move
		for k, o := range trials[:len(t.moves)] {
			if o.worse == nil && s.cheaper(o.cost) {
				good = append(good, t.moves[k])
			}
		}
		if !s.lower(good) {
			return
		}
	}
}

// idle tells of a move that is not cheaper, nor any thinner size in its place.
func (t *trying) idle(m move) bool {
	x := t.s.slots[m.slot]
	if x.kind != WireSize && x.kind != Fuse || !t.simple(m) {
		return false
	}
	for ; m.to >= 0; m.to-- {
		if t.s.cheaper(t.cost(m)) {
			return false
		} else if x.kind == Fuse {
			break
		}
	}
	return true
}

// lower makes moves together, or the first half of them, and so on; true when
// that is better than the best.
func (s *search) lower(moves []move) bool {
	for ; len(moves) > 0; moves = moves[:len(moves)/2] {
		for _, m := range moves {
			s.slots[m.slot].set(m.to)
		}
		if s.improved() {
			return true
		}
	}
	return false
}
