package derivation

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// useOf is how far a switch's contact is used: each current through it over the rating for its kind. Of currents that reach the loads by
// another feed as well not all pass it.
func (b *book) useOf(contact *circuit.Branch, s *design.Switch, uses []finding.Use) candidate {
	at := func(sol *solve.Solution, i int) float64 { return math.Abs(sol.BranchA[uses[i].Branch]) }
	whole := func(sol *solve.Solution) (share, known float64) {
		for i, u := range uses {
			share, known = share+at(sol, i)/u.RatingA, known+at(sol, i)
		}
		return share, known
	}
	through := func(sol *solve.Solution, known float64) float64 {
		return math.Min(1, math.Abs(sol.BranchA[contact.Index])/known)
	}
	return candidate{func(sol *solve.Solution) float64 {
		share, known := whole(sol)
		return share * through(sol, known)
	}, func(v *view) *value {
		const label = "use of rating"
		share, known := whole(v.sol)
		var list []*value
		for i, u := range uses {
			if a := at(v.sol, i); a > 0 {
				draws := v.amps(b.c.Branches[u.Branch])
				list = append(list, of("use by "+elementName(b.c.Branches[u.Branch]), percent, a/u.RatingA, "{} ÷ {}", draws, switchRating(s, u)).by(draws))
			}
		}
		if len(list) == 0 {
			return solved(label, percent, share, "nothing flows")
		}
		all := list[0]
		if len(list) > 1 {
			all = sum(label, percent, share, list...)
		}
		if part := through(v.sol, known); part < 1 {
			return of(label, percent, share*part, "{} × {} ÷ {}", all, v.amps(contact), solved("all that draws", amps, known, "sum of the currents above"))
		}
		return all
	}}
}

// switchRating is what a switch is rated at for a kind of load.
func switchRating(s *design.Switch, u finding.Use) *value {
	const table = "FAA AC 43.13-1B Table 11-4"
	base := func() *value {
		if s.RatingA.Given() || s.Type == nil {
			return given("its rating, resistive", amps, s.RatingA)
		}
		t := s.Type
		if rating := design.Behaviour(u.Kind).ContactA(t.ResistiveA, t.LampA, t.MotorA); rating != t.ResistiveA && u.RatingA != t.ResistiveA {
			return row("its rating for "+u.Kind+", "+t.Name, amps, rating, t.Source)
		}
		return row("its rating, resistive, "+t.Name, amps, t.ResistiveA, t.Source)
	}()
	switch times := base.v / u.RatingA; {
	case as(times, 1):
		return base
	case times < 1:
		return of("what it carries while a starter turns", amps, u.RatingA, "{} × {}", base,
			row("times its rating", plain, 1/times, library.Source{Text: "makers give 1.3 to 1.7 times it for five minutes", Certainty: library.FromMemory}))
	default:
		return of("its rating for "+u.Kind, amps, u.RatingA, "{} ÷ {}", base, published("divided for "+u.Kind, plain, times, table))
	}
}
