package harness

import (
	"math"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
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
// tried against them. It takes up to some hundred reviews, so it is no stage of Assess.
func (r *Review) Remedies() *remedy.Plan {
	most := make([]float64, len(r.Circuit.Branches))
	for _, s := range r.Solutions {
		for i, a := range s.BranchA {
			if a = math.Abs(a); !math.IsInf(a, 0) {
				most[i] = max(most[i], a)
			}
		}
	}
	rater := conductor.NewRater(r.Design.Library, r.Design.Practice)
	return remedy.Compute(&remedy.Input{Design: r.Design, Circuit: r.Circuit, Findings: r.Findings,
		Amps: func(b *circuit.Branch) float64 { return most[b.Index] },
		Judge: func() ([]*finding.Finding, bool) {
			changed, err := assess(r.Design, rater)
			if err != nil {
				return nil, false
			}
			return changed.Findings, true
		}})
}
