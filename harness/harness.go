// Package harness takes a design through the whole chain: circuit, solution of
// each situation, charging budget and findings. It is the way in for commands
// and documents; each stage is a package of its own below this one.
package harness

import (
	"sync"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/remedy"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/harness/sizing"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/cranking"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/outlook"
	"fusewright/harness/study/overload"
	"fusewright/harness/study/protection"
)

// Review is everything known of a design after all stages; of one that is open (see Open),
// after those that were asked for.
type Review struct {
	Design    *design.Design
	Circuit   *circuit.Circuit
	Solutions []*solve.Solution // one per situation, in design order
	Budget    *budget.Budget
	Findings  []*finding.Finding // sorted, accepted ones included
	// Faults and Protection are the studies of every single fault and of every
	// fuse against what hangs on it.
	Faults     *fault.Study
	Protection *protection.Study
	// Cranking is what a start of the engine leaves of the voltage.
	Cranking *cranking.Study
	// Sizing is what was chosen for what the design leaves open; nil = nothing is.
	Sizing *sizing.Plan
	// Corners are the situations at nominal, with the temperature of every wire,
	// and at their worst corners. Solutions are its nominal ones.
	Corners *corner.Set
	// Plan is what follows from what, see Remedies; nil until that is asked for.
	Plan *remedy.Plan

	rater      *conductor.Rater // what it remembers serves the trials of remedies too
	rideEffort int              // see ride.Result
	outlook    func() *outlook.Planner
}

// Assess takes a design that read without problems through every stage. What
// the design leaves open is chosen first and filled in (package sizing). The
// error is the circuit's problem list; findings are no error.
func Assess(d *design.Design) (*Review, error) {
	r, err := Open(d)
	if err == nil {
		r.Judged()
	}
	return r, err
}

// Open is Assess of which each stage is run when its method first asks for it.
func Open(d *design.Design) (*Review, error) {
	plan, err := sizing.Complete(d)
	if err != nil {
		return nil, err
	}
	r, err := open(d, plan.Rater(d))
	if err != nil {
		return nil, err
	}
	r.Sizing = plan
	return r, nil
}

// open is Open of a design as it stands.
func open(d *design.Design, rater *conductor.Rater) (*Review, error) {
	c, err := circuit.BuildBy(d, rater)
	if err != nil {
		return nil, err
	}
	r := &Review{Design: d, Circuit: c, rater: rater}
	r.outlook = sync.OnceValue(func() *outlook.Planner { return outlook.New(r.Circuit, r.Corners, r.Budget) })
	return r, nil
}

// assess is Assess of a design as it stands, with a rater of its library and practice
// that remembers from one to the next.
func assess(d *design.Design, rater *conductor.Rater) (*Review, error) {
	r, err := open(d, rater)
	if err == nil {
		r.Judged()
	}
	return r, err
}

// Solved are the situations at nominal and at their worst corners.
func (r *Review) Solved() *corner.Set {
	if r.Corners == nil {
		r.Corners = corner.ComputeBy(r.Circuit, r.rater)
		r.Solutions = r.Corners.Solutions()
	}
	return r.Corners
}

// Balanced is the charging budget.
func (r *Review) Balanced() *budget.Budget {
	if r.Budget == nil {
		r.Solved()
		r.Budget = budget.Compute(r.Circuit, r.Solutions)
	}
	return r.Budget
}

// Faulted is the study of every single fault.
func (r *Review) Faulted() *fault.Study {
	if r.Faults == nil {
		r.Faults = fault.ComputeBy(r.Circuit, r.rater)
	}
	return r.Faults
}

// Guarded is the study of every fuse against what hangs on it.
func (r *Review) Guarded() *protection.Study {
	if r.Protection == nil {
		r.Solved()
		r.Protection = protection.Compute(r.Circuit, r.Solutions, r.Faulted())
	}
	return r.Protection
}

// Judged are the findings, behind which stands every other stage.
func (r *Review) Judged() []*finding.Finding {
	if r.Cranking == nil {
		var faults sync.WaitGroup
		faults.Go(func() { r.Faulted() })
		r.Balanced()
		faults.Wait()
		r.Guarded()
		r.Cranking = cranking.Compute(r.Circuit)
		in := &rules.Input{Circuit: r.Circuit, Solutions: r.Solutions, Budget: r.Budget,
			Faults: r.Faults, Protection: r.Protection, Overloads: overload.Compute(r.Circuit, r.Corners.Every(), r.Faults), Cranking: r.Cranking,
			Corners: r.Corners}
		r.Findings = rules.Check(in)
		r.rideEffort = in.RideEffort
		finding.Enumerate(r.Findings)
	}
	return r.Findings
}
