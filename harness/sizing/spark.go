package sizing

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/review/finding"
)

// sparkG is what a fuse that may spark in petrol vapour counts, in grams of copper, beside
// one that does not: more than any wire that the other one asks for (our choice).
const sparkG = 100_000

// inVapour tells whether petrol vapour can gather where a slot's part is and the part
// itself is not said to be ignition protected.
func (s *slot) inVapour() bool {
	x, is := s.owner.(interface{ SaidSparkProof() bool })
	place := s.owner.PartPlace()
	return place != nil && place.PetrolVapour && !(is && x.SaidSparkProof())
}

// sparks tells whether a candidate may spark in use.
func (s *slot) sparks(k int) bool {
	switch s.kind {
	case Fuse:
		return !s.fuses[k].kind.IgnitionProtected
	case RelayForm:
		return !s.forms[k].IgnitionProtected
	case Plug:
		return !s.plugs[k].Sealed
	}
	return false
}

// strengthA is what a fuse or a relay is for.
func (s *slot) strengthA(k int) float64 {
	if s.kind == RelayForm {
		return s.forms[k].MakeA
	}
	return s.fuses[k].rating.RatingA
}

// keepSparksOut leaves the fuses and relays that stand in petrol vapour only what is
// ignition protected, where the library has one for the place: not many times as strong as
// what would do elsewhere.
func (w *view) keepSparksOut(i int, bears func(k int) bool) {
	x := w.s.slots[i]
	if x.owner == nil || !x.inVapour() {
		return
	}
	least, proofA := math.Inf(1), math.Inf(1)
	for k := range x.count() {
		if a := x.strengthA(k); bears(k) {
			if least = min(least, a); !x.sparks(k) {
				proofA = min(proofA, a)
			}
		}
	}
	x.sparkless = proofA <= MostStronger*least
	for k := range x.fuses {
		if x.sparkless && x.sparks(k) {
			x.fuses[k].otherG += sparkG
		}
	}
}

// answersForSpark tells whether a spark in petrol vapour is that of a part that sizing
// chooses where it has one that makes none.
func (s *search) answersForSpark(f *finding.Finding) bool {
	return slices.ContainsFunc(s.slots, func(x *slot) bool {
		return x.owner != nil && x.owner.PartName() == f.Part && x.sparks(x.at) && (x.kind == Plug || x.sparkless)
	})
}

// lacksProof says of a fuse or relay in petrol vapour that the library has none for it that
// is ignition protected; "" = it has, or none is needed.
func (s *search) lacksProof(x *slot) string {
	if x.owner == nil || x.kind != Fuse && x.kind != RelayForm || !x.inVapour() || x.sparkless || !x.sparks(x.at) {
		return ""
	}
	return fmt.Sprintf("no ignition protected %[1]s in the library suits %[2]s, and petrol vapour can gather at %[3]s: move it out of the space",
		x.kind, x.part, x.owner.PartPlace().Name)
}
