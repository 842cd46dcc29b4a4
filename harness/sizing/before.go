package sizing

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// beforeFuses makes no wire before a fuse thinner than what follows the fuse, where the
// ends take it and nothing goes wrong by it: a fitter goes on in one size or thinner.
func (s *search) beforeFuses() {
	w := s.look(s.best.verdict)
	for i, x := range s.slots {
		if _, is := x.owner.(*design.Fuse); !is || x.kind != WireSize {
			continue
		}
		s.take(s.best)
		for z := x.at; z < len(x.sizes) && x.sizes[x.at].AreaMm2 < w.followingMm2(x.owner)*0.999; z++ {
			if w.crimpsAll(i, z) {
				x.set(z)
			}
		}
		if x.at == s.best.at[i] {
			continue
		}
		if a, err := s.answer(); err == nil && !s.best.verdict.score.less(a.verdict.score) {
			s.best, s.follows[i] = a, true
		}
	}
	s.take(s.best)
}

// followingMm2 is the thickest wire that a part feeds, but for those of coils, as judged.
func (w *view) followingMm2(part design.Part) (mm2 float64) {
	for _, x := range w.v.c.Wires {
		if x.From.Part.Source == part && x.Role == circuit.FeedWire && x.Spec.Size != nil {
			mm2 = max(mm2, x.Spec.Size.AreaMm2)
		}
	}
	return mm2
}
