package rules

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// ContactRatings is what a contact switches by kind of load, in amperes; zero
// means not known. Of them share is left where it stands, which may be nothing.
type ContactRatings struct {
	resistive, lamp, motor, share float64
	short                         []library.CarriesFor // more than resistive, for a time
	only                          carriedOnly
}

// carriedOnly tells of what draws that a contact only carries, since another one switches it; nil = of nothing.
type carriedOnly func(draw *circuit.Branch) bool

// RelayContact is what a contact of a relay form switches at an ambient in °C.
func RelayContact(form *library.RelayForm, contact *circuit.Branch, ambientC float64) ContactRatings {
	if contact.Closer.Break != nil {
		r := ContactRatings{resistive: form.BreakA, share: form.Share(ambientC)}
		if form.Reversing {
			r.short = form.ShortTime
		}
		return r
	}
	return ContactRatings{form.MakeA, form.LampA, form.MotorA, form.Share(ambientC), form.ShortTime, nil}
}

// Known tells whether the contact has any rating.
func (r ContactRatings) Known() bool { return r.resistive > 0 }

// Of is the rating for a behaviour.
func (r ContactRatings) Of(b design.Behaviour) float64 {
	return b.ContactA(r.resistive, r.lamp, r.motor) * r.share
}

// OfLoad is the rating for a load: for one that is on for a time, where the maker
// has no figure for its kind, what the contact carries for so long, as long as the
// mean heat over its cycle is no more than that of the rating.
func (r ContactRatings) OfLoad(l *circuit.LoadSpec) float64 {
	rating := r.Of(l.Behaves)
	if l.Load == nil || !(l.Load.OnForS.Value > 0) || l.Behaves.ContactA(0, r.lamp, r.motor) > 0 {
		return rating
	}
	on, every := l.Load.OnForS.Value, l.Load.EveryS.Value
	for _, s := range r.short {
		if s.S >= on {
			return max(rating, min(s.CurrentA*r.share, rating*math.Sqrt(every/on)))
		}
	}
	return rating
}

// unseenW is from where a load that is left on unseen is a hazard, by its
// behaviour; a row for each of design.Behaviours, +Inf = never.
var unseenW = map[design.Behaviour]float64{
	design.Resistor:      warmW,
	design.FilamentLamp:  math.Inf(1),
	design.ConstantPower: math.Inf(1),
	design.Motor:         0,
}

// loading is how far a contact is used.
type loading struct {
	share float64 // sum of current over rating by kind; above 1 is too much, +Inf where nothing is allowed
	A     float64
	kinds []string // kinds of load that draw through it
	uses  []finding.Use
}

// carried are the ratings of what the contact carries for good, whatever it is: those
// for lamps and motors have their starts in them.
func (r ContactRatings) carried() ContactRatings {
	return ContactRatings{resistive: r.resistive, share: r.share, short: r.short, only: r.only}
}

// heldContact holds what draws below a contact against its ratings: each load's
// current over the rating for its kind, summed, in the situation where that is most;
// in the worst case over what the contact carries. The loading is that of the figure
// that decides.
func (p *Pass) heldContact(contact *circuit.Branch, r ContactRatings, severity func(loading) finding.Severity) (verdict, loading) {
	if !r.Known() {
		return verdict{}, loading{}
	}
	draws := p.drawsOf(contact)
	rated := func(by corner.Kind) ContactRatings {
		if by == corner.AtWorst {
			return r.carried()
		}
		return r
	}
	loaded := func(c cornered) loading {
		now := weigh(p.solutionOf(c.in), contact, draws, rated(c.by))
		in := func(s *solve.Solution) bool { return s.Situation == c.in }
		amps := p.figureOf(1, in, func(s *solve.Solution) float64 { return math.Abs(s.Amps(contact)) })
		now.share, now.A = c.decisive(), amps(c.by).decisive()
		return now
	}
	v := p.held("switching rating", func(by corner.Kind) cornered {
		return p.figureOf(1, nil, func(s *solve.Solution) float64 { return weigh(s, contact, draws, rated(by)).share })(by)
	}, figure.Larger, 1, 1, func(c cornered) finding.Severity { return severity(loaded(c)) })
	if v.severity == 0 {
		return v, loading{}
	}
	return v, loaded(v.cornered)
}

// does words what a contact does: it switches what it is rated for, or carries more
// than it may in the worst case.
func (u loading) does(v verdict, where string) string {
	if v.by == corner.AtWorst || len(u.kinds) == 0 {
		return fmt.Sprintf("carries %s%s, %s of its continuous rating%s", amps(u.A), where, share100(u.share), v.said(share100))
	}
	return fmt.Sprintf("switches %s of %s load%s, %s of its rating for that%s", amps(u.A), wording.And(u.kinds), where,
		share100(u.share), v.said(share100))
}

// crankShare is what a battery switch carries while a starter turns, over its continuous rating:
// makers give 1.3 to 1.7 times it for five minutes, and more for a start (from memory).
const crankShare = 1.3

// startRating is what a contact is good for of a load whose start a resistor in series holds down. The rating for a kind
// is less than the resistive one by what its start is taken to be over its use (AC 43.13-1B Table 11-4): that many times less
// is in what starts, and not in the resistor, which takes droppedV in use.
func (r ContactRatings) startRating(rating, loadV, droppedV float64) float64 {
	start := r.Of(design.Resistor) / rating
	if !(start > 1) || !(droppedV > 0) {
		return rating
	}
	return rating * (loadV + start*droppedV) / (loadV + droppedV)
}

// droppedV is what the dropping resistors take through which all that a load draws flows.
func droppedV(s *solve.Solution, load *circuit.Branch) (sum float64) {
	for _, x := range s.Circuit.Branches {
		if !x.Dropper() {
			continue
		}
		behind, amps := behind(s.Circuit, x), 0.0
		if !slices.Contains(behind, load) {
			continue
		}
		for _, b := range behind {
			amps += math.Abs(s.Amps(b))
		}
		if math.Abs(s.Amps(x)) >= seriesAlone*amps {
			sum += math.Abs(s.Volts(x))
		}
	}
	return sum
}

// seriesAlone is the share of a load's current from which a resistor is in series with it and no other way beside it.
const seriesAlone = 0.99

func weigh(s *solve.Solution, contact *circuit.Branch, draws []*circuit.Branch, r ContactRatings) loading {
	now := loading{A: math.Abs(s.Amps(contact))}
	if !(now.A > 0) {
		return loading{}
	}
	seen := map[design.Behaviour]bool{}
	known := 0.0
	for _, b := range draws {
		a, kind, rating := math.Abs(s.Amps(b)), design.Resistor, r.Of(design.Resistor)
		carried := r.only != nil && r.only(b)
		switch {
		case carried && b.Load != nil && isStarter(b.Load.Load):
			rating *= crankShare
		case carried:
		case b.Load != nil:
			kind, rating = b.Load.Behaves, r.startRating(r.OfLoad(b.Load), math.Abs(s.LoadV(b)), droppedV(s, b))
		}
		now.uses = append(now.uses, finding.Use{Branch: b.Index, Kind: string(kind), RatingA: rating})
		if !(a > 0) {
			continue
		}
		now.share += a / rating
		known += a
		if !carried && !seen[kind] {
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
