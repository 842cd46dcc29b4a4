package harness

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/remedy"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/together"
)

// Together works out which accessories may run at once. It is asked for by the
// charging budget alone and can take longer than all rules, so it is no stage
// of Assess.
func (r *Review) Together() *together.Plan {
	return together.Compute(r.Circuit, r.Solutions, r.Budget)
}

// Remedies groups the findings by what they follow from, with the changes that were
// tried against them, and keeps that as the review's plan. It takes up to some hundred
// reviews, so it is no stage of Assess; the design changes meanwhile.
func (r *Review) Remedies() *remedy.Plan {
	return r.RemediesUnless(func() bool { return false })
}

// RemediesUnless is Remedies that tries no more changes once nobody wants to know; the plan
// is cut then.
func (r *Review) RemediesUnless(given func() bool) *remedy.Plan {
	most := make([]float64, len(r.Circuit.Branches))
	for _, x := range r.Corners.Results[corner.Nominal] {
		for i, a := range x.Solution.BranchA {
			if a = math.Abs(a); !math.IsInf(a, 0) {
				most[i] = max(most[i], a)
			}
		}
	}
	effort := r.rideEffort
	r.Plan = remedy.Compute(&remedy.Input{Design: r.Design, Circuit: r.Circuit, Findings: r.Findings,
		Hands: func() *together.Plan { return together.Weigh(r.Circuit, r.Solutions, r.Budget) },
		Spent: func() bool { return effort > mostRideEffort || given() },
		Amps:  func(b *circuit.Branch) float64 { return most[b.Index] },
		Judge: func() ([]*finding.Finding, bool) {
			changed, err := assess(r.Design, r.rater)
			if err == nil {
				effort += changed.rideEffort
			}
			if err != nil || r.stops(changed) {
				return nil, false
			}
			return changed.Findings, true
		}})
	return r.Plan
}

// mostRideEffort ends the trials of remedies: those of a usual ride take some hundred reviews there.
const mostRideEffort = 300_000

// stops tells whether a load that runs in a situation is still on there in a changed
// design and runs no more: what that clears is mended by nothing.
func (r *Review) stops(changed *Review) bool {
	for _, was := range r.Solutions {
		at := slices.IndexFunc(changed.Solutions, func(s *solve.Solution) bool { return s.Situation.Name == was.Situation.Name })
		if at < 0 || changed.Solutions[at].Status != solve.Converged {
			continue
		}
		now := changed.Solutions[at]
		for _, p := range r.Circuit.Parts {
			l, is := p.Source.(*design.Load)
			if !is || !slices.Contains(now.Situation.On, l) {
				continue
			}
			if q := changed.Circuit.PartOf(l); q != nil && runs(was, p) && !runs(now, q) {
				return true
			}
		}
	}
	return false
}

// runs tells whether a load draws in a situation.
func runs(s *solve.Solution, p *circuit.Part) bool {
	return slices.ContainsFunc(p.Branches, func(b *circuit.Branch) bool { return s.LoadOn[b.Index] })
}
