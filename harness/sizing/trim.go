package sizing

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
			if (s.raised[i] || all) && s.best.at[i] > 0 {
				moves = append(moves, move{i, s.best.at[i] - 1})
			}
		}
		trials := s.try(moves)
		s.secondBest(moves, trials)
		var good []move
		for k, t := range trials {
			if t.worse == nil && t.cost.TotalG() < s.best.cost.TotalG()-1e-9 {
				good = append(good, moves[k])
			}
		}
		if !s.lower(good) {
			return
		}
	}
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
