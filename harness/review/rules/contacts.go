package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
)

// contactRatings is what a contact switches by kind of load, in amperes; zero
// means not known. Of them share is left where it stands, which may be nothing.
type contactRatings struct{ resistive, lamp, motor, share float64 }

// manner is what the rules go by of a behaviour.
type manner struct {
	own     func(contactRatings) float64 // a contact's rating for it alone
	unseenW float64                      // from where it is a hazard when it is left on unseen; +Inf = never
}

// manners has a row for each of design.Behaviours. Constant-power electronics count
// as resistive at a contact.
var manners = map[design.Behaviour]manner{
	design.Resistor:      {func(r contactRatings) float64 { return r.resistive }, warmW},
	design.FilamentLamp:  {func(r contactRatings) float64 { return r.lamp }, math.Inf(1)},
	design.ConstantPower: {func(r contactRatings) float64 { return r.resistive }, math.Inf(1)},
	design.Motor:         {func(r contactRatings) float64 { return r.motor }, 0},
}

// of is the rating for a behaviour; a kind without a rating of its own falls back on
// the resistive one, and for a behaviour without a row there is none.
func (r contactRatings) of(b design.Behaviour) float64 {
	m, known := manners[b]
	if !known {
		return 0
	}
	if own := m.own(r); own > 0 {
		return own * r.share
	}
	return r.resistive * r.share
}

// loading is how far a contact is used in its worst situation.
type loading struct {
	share float64 // sum of current over rating by kind; above 1 is too much, +Inf where nothing is allowed
	A     float64
	kinds []string // kinds of load that draw through it
	in    *solve.Solution
}

// loadingOf weighs what draws below a contact: each load's current over the
// contact's rating for its kind, summed, in the situation where that is most.
func (f *facts) loadingOf(contact *circuit.Branch, r contactRatings) loading {
	var most loading
	if r.resistive <= 0 {
		return most
	}
	draws := f.drawsBelow(contact.B)
	for _, s := range f.usable {
		if now := weigh(s, contact, draws, r); corner.Beyond(now.share, most.share) {
			most = now
		}
	}
	return most
}

func weigh(s *solve.Solution, contact *circuit.Branch, draws []*circuit.Branch, r contactRatings) loading {
	now := loading{A: math.Abs(s.Amps(contact)), in: s}
	if !(now.A > 0) {
		return loading{}
	}
	seen := map[design.Behaviour]bool{}
	known := 0.0
	for _, b := range draws {
		a, kind := math.Abs(s.Amps(b)), design.Resistor
		if b.Load != nil {
			kind = b.Load.Behaves
		}
		if !(a > 0) {
			continue
		}
		now.share += a / r.of(kind)
		known += a
		if !seen[kind] {
			seen[kind] = true
			now.kinds = append(now.kinds, string(kind))
			slices.Sort(now.kinds)
		}
	}
	// Currents that reach the loads by another feed as well do not all pass here.
	if known > now.A {
		now.share *= now.A / known
	}
	return now
}
