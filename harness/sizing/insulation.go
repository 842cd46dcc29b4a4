package sizing

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// hotK is how little below what an insulation bears with the margin a place is so hot that
// a wire carries half there of what it does at 30 °C, or less: a quarter of the rise is left.
const hotK = 15

// dearerShare is what a better insulation costs, as a share of the copper in it (common
// practice, no source).
const dearerShare = 0.25

// usualInsulation gives the wires whose insulation the design leaves open that of its practice.
func usualInsulation(d *design.Design) {
	for _, l := range leads(d) {
		for i := range *l.feeds {
			if w := &(*l.feeds)[i].Wire; w.TypeAuto && w.SizeAuto && w.Type != d.Wire.Type {
				w.Type, w.Size = d.Wire.Type, d.Wire.Type.SizeFor(w.Size.AreaMm2)
			}
		}
	}
}

// insulated chooses again with a better insulation on the wires that lie hot in the usual
// one, where the design leaves it open, and keeps what leaves less wrong or costs less.
func insulated(d *design.Design, s *search) (*search, error) {
	hot := s.hot()
	if len(hot) == 0 {
		return s, nil
	}
	best, usual := s, s.inUsual(hot)
	var kept *library.WireType
	for _, t := range betterTypes(d) {
		insulate(hot, t)
		other, err := chooseBare(d, s.asIfOn)
		if err != nil {
			return nil, err
		}
		if other.usual = usual; other.betterInsulated(best, kept != nil) {
			best, kept = other, t
		}
	}
	insulate(hot, kept)
	if kept == nil {
		usualInsulation(d)
	}
	best.take(best.best)
	best.proven = false // each wire in its own insulation was not tried
	return best, nil
}

// inUsual is what wires came to in the usual insulation.
func (s *search) inUsual(list []*slot) map[home]string {
	usual := map[home]string{}
	for _, x := range list {
		usual[x.home()] = x.feeds[0].Wire.Size.Label + " " + s.d.Wire.Type.Name
		if s.best.verdict.score.grave() != (score{}) {
			usual[x.home()] += ", with faults left"
		}
	}
	return usual
}

// betterTypes are the insulations of the standard and wall of the usual one that stand more
// heat, the least first.
func betterTypes(d *design.Design) []*library.WireType {
	now := d.Wire.Type
	list := slices.DeleteFunc(slices.Clone(d.Library.WireTypes), func(t *library.WireType) bool {
		return t.Standard != now.Standard || t.Cores != now.Cores || t.ClassC <= now.ClassC || len(t.Sizes) != len(now.Sizes) ||
			t.Sizes[0].OuterMm != now.Sizes[0].OuterMm
	})
	return ascending(list, func(t *library.WireType) float64 { return t.ClassC })
}

// hot are the wires of open size and insulation that lie hot for it, with those of one
// size with them.
func (s *search) hot() (list []*slot) {
	if s.d.Wire.Type == nil || s.d.Practice == nil {
		return nil
	}
	w := s.look(s.best.verdict)
	hotC := s.d.Wire.Type.ClassC - s.d.Practice.HotSpotMarginC - hotK
	for i, x := range s.slots {
		open := !slices.ContainsFunc(x.each(), func(y *slot) bool { return y.kind != WireSize || !y.feeds[0].Wire.TypeAuto })
		if open && slices.ContainsFunc(w.wires[i], func(x *circuit.Wire) bool { return x.AmbientC > hotC }) {
			list = append(list, x.each()...)
		}
	}
	return list
}

// insulate gives wires an insulation; nil = as they have.
func insulate(list []*slot, t *library.WireType) {
	for _, x := range list {
		for i := range x.feeds {
			if w := &x.feeds[i].Wire; t != nil && w.Type != t {
				w.Type, w.Size = t, t.SizeFor(w.Size.AreaMm2)
			}
		}
	}
}

// adviceG is what may be spent on having one advice less, in grams of copper (our choice): a
// thinner wire in a better insulation loses more volts, but no cables of kilograms are laid
// against what is only advised.
const adviceG = 1000

// betterInsulated tells whether a search with a better insulation came out better than
// another, which has the usual one, or a better one too.
func (s *search) betterInsulated(than *search, dearer bool) bool {
	a, b := s.best, than.best
	if g, h := a.verdict.score.grave(), b.verdict.score.grave(); g != h {
		return g.less(h)
	}
	moreG := adviceG * float64(a.verdict.score[2]-b.verdict.score[2])
	if !dearer {
		moreG += dearerShare * s.insulatedG()
	}
	return a.cost.TotalG()+moreG < b.cost.TotalG()-1e-9
}

// insulatedG is the copper under another insulation than the usual one.
func (s *search) insulatedG() (g float64) {
	for _, x := range s.best.verdict.c.Wires {
		if x.Spec.SizeAuto && x.Spec.TypeAuto && x.Spec.Type != s.d.Wire.Type {
			g += copperG(x, x.Spec.Size)
		}
	}
	return g
}
