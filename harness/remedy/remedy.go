// Package remedy tells what of a review follows from what: each finding's usual
// changes are put into the design one at a time, the whole chain judges it again, and
// what is gone belonged to that cause. Nothing is proposed that was not tried. The
// design is as before afterwards.
package remedy

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
	"fusewright/harness/study/together"
)

// Input is a review, and the way to another one of the same design.
type Input struct {
	Design   *design.Design
	Circuit  *circuit.Circuit
	Findings []*finding.Finding // sorted, accepted ones included
	// Judge reviews the design as it stands, what sizing chose before as it is; false =
	// it cannot be built, or a load that is still on no longer runs.
	Judge func() ([]*finding.Finding, bool)
	// Spent tells that the reviews made so far took all the time that they may; nil = their number alone counts.
	Spent func() bool
	// Hands is what each hand switches, and what to shed where a situation asks too much.
	Hands func() *together.Plan
	// Amps is the greatest current of a branch at nominal over the situations.
	Amps func(*circuit.Branch) float64
}

// Trial is a change with what came of it.
type Trial struct {
	About string // what is changed: "console bus, return wire"
	Was   string // what the design has: "14 AWG"; "" = nothing that could be named
	Will  string // what was put in its place: "6 AWG"
	// Decides: it is for the builder to say whether the vehicle may be so. Guess: the
	// figure put in is one that may be meant.
	Decides, Guess bool

	Mends, Eases []*finding.Finding // of the review; eased are those of lower severity
	Worsens      []*finding.Finding // further beyond their limits
	Breaks       []*finding.Finding // that only the changed design has, or has worse
	Failed       bool               // the changed design cannot be built
	after        count
	left         map[*finding.Finding]*finding.Finding // what there is of a finding afterwards
	degree       bool                                  // the next of its ladder is more of it
	sizes        []*sizing.Value                       // of the wires that it makes thicker; nil = it is another change

	put func() (back func())
}

// Holds tells whether the change mends something, brings advice at most, and what it
// brings or worsens is of less weight than what it mends.
func (t *Trial) Holds() bool {
	mends := worst(t.Mends)
	return worst(t.Breaks) < mends && worst(t.Breaks) <= finding.Advice && worst(t.Worsens) < mends
}

// worst is the highest severity; 0 = of none.
func worst(list []*finding.Finding) (most finding.Severity) {
	for _, f := range list {
		most = max(most, f.Severity)
	}
	return most
}

// Cause is a thing in the design with all that follows from it.
type Cause struct {
	// Findings in the order of the review: the first decides where the cause stands.
	Findings []*finding.Finding
	Remedy   *Trial // that holds; nil = none of those tried does
	// Tried are others that mend or ease the first finding, the better ones first.
	Tried []*Trial
	// Untried: no change was tried against any of its findings.
	Untried bool
}

// Plan is what a review comes down to.
type Plan struct {
	Causes []*Cause
	// Together is all remedies in one design; nil with fewer than two of them.
	Together *Trial
	// Left are the findings that no remedy of the plan mends or eases.
	Left []*finding.Finding
	// Cut tells that not all changes were tried: the design is too large.
	Cut    bool
	Trials int // how many reviews were made
}

// Compute tries the usual changes and groups the open findings by what mends them.
// The time is that of at most some hundred reviews of a small design, fewer of a
// large one.
func Compute(in *Input) *Plan {
	t := newTester(in)
	p := &Plan{}
	t.tryAll()
	p.Causes, p.Cut, p.Trials = t.causes(), t.cut, len(t.order)
	p.together(t)
	for _, c := range p.Causes {
		if c.Remedy == nil {
			p.Left = append(p.Left, c.Findings...)
		}
	}
	return p
}

// together tries all remedies at once.
func (p *Plan) together(t *tester) {
	var all []*Trial
	for _, c := range p.Causes {
		if c.Remedy != nil && !c.Remedy.Guess {
			all = append(all, c.Remedy)
		}
	}
	if len(all) < 2 {
		return
	}
	p.Together = &Trial{put: func() func() {
		var back []func()
		for _, x := range all {
			back = append(back, x.put())
		}
		return func() {
			for i := len(back) - 1; i >= 0; i-- {
				back[i]()
			}
		}
	}}
	t.run(p.Together)
}
