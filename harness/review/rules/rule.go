package rules

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/cranking"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/overload"
	"fusewright/harness/study/protection"
)

// Rule is one judgement on a design.
type Rule struct {
	// Name is stable and never reused: lower case words with hyphens.
	Name  string
	Title string // one line, what is wrong
	Says  string // the same of one part or wire, behind its name and a colon: "too little voltage"
	Doc   string // what is looked at, and what is left out on purpose
	// Formula is how the numbers come about; "none" when nothing is computed.
	Formula string
	Limits  string // where the limit comes from and how the design changes it
	Why     string // what happens when it is left as it is
	Change  string // what usually mends it
	// Severity says when the finding is a danger, a fault or advice.
	Severity string
	// Named: its advice is named part by part where other advice beside graver findings
	// is counted only: what it says must not be missed.
	Named bool
	// Source is the published origin of the limit with how sure it is, or
	// "common practice, no source".
	Source string
	// Mend is what sizing chooses larger against it; MendNot = it leaves it alone.
	Mend Mend
	// InUse: something carries more than it may in use, so that a thinner wire
	// mends it only by what it loses.
	InUse bool
	// Bad are sections of a design that trigger the rule. Good do not; "" = Bad with
	// each text of Mended that stands first of two put right by the second.
	Bad, Good string
	Mended    []string
	// Run reports the findings of one design.
	Run func(*Pass)
}

// Mends is the example that the rule says nothing of.
func (r *Rule) Mends() string {
	if r.Good != "" {
		return r.Good
	}
	return strings.NewReplacer(r.Mended...).Replace(r.Bad)
}

// Input is what the rules judge.
type Input struct {
	Circuit   *circuit.Circuit
	Solutions []*solve.Solution // one per situation
	Budget    *budget.Budget    // nil = the budget rules say nothing
	// Faults and Protection are the studies of single faults and of the curves
	// of fuses; nil = the rules that rest on them say nothing.
	Faults     *fault.Study
	Protection *protection.Study
	// Overloads are what the circuit can drive through its own wires; nil = the rule
	// that rests on them says nothing.
	Overloads *overload.Study
	// Cranking is what a start of the engine leaves of the voltage; nil = the rules that
	// rest on it say nothing.
	Cranking *cranking.Study
	// Corners are the situations at their worst corners, and what each wire may
	// carry where it is laid; nil = the rules judge by Solutions alone.
	Corners *corner.Set
	// RideEffort is filled in: what the design's rides took, see ride.Result.
	RideEffort int
}

// Pass is one rule at work on one design.
type Pass struct {
	*facts
	rule  *Rule
	found []*finding.Finding
}

// report adds a finding, filling in what the rule says for all of its
// findings: name, why, what to change, and the source of the limit.
func (p *Pass) report(f finding.Finding) {
	f.Rule = p.rule.Name
	if f.Why == "" {
		f.Why = p.rule.Why
	}
	if f.Change == "" {
		f.Change = p.rule.Change
	}
	if f.Source == "" {
		f.Source = p.rule.Source
	}
	p.found = append(p.found, &f)
}

// say is report of a finding with its sentence.
func (p *Pass) say(f finding.Finding, format string, args ...any) {
	f.What = fmt.Sprintf(format, args...)
	p.report(f)
}

// Check runs every rule and returns the findings sorted, the most severe
// first. Findings that the design accepts stay in the list with the reason.
func Check(in *Input) []*finding.Finding {
	return check(in, func(*Rule) bool { return true })
}

// CheckSizes is the part of Check that sizing mends. Acceptances of these findings
// and what speaks for them are the same, since no other rule speaks for theirs.
func CheckSizes(in *Input) []*finding.Finding {
	sizes := func(r *Rule) bool { return r.Mend != MendNot }
	return slices.DeleteFunc(check(in, sizes), func(f *finding.Finding) bool { return !sizes(Find(f.Rule)) })
}

func check(in *Input, runs func(*Rule) bool) []*finding.Finding {
	f := newFacts(in)
	var found []*finding.Finding
	for _, r := range registry {
		if !runs(r) {
			continue
		}
		p := &Pass{facts: f, rule: r}
		r.Run(p)
		found = append(found, p.found...)
	}
	found = standAside(f, accept(f, found))
	finding.Sort(found)
	return found
}
