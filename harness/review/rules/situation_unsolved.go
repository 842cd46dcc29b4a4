package rules

import (
	"fmt"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var situationUnsolved = &Rule{
	Name:  "situation-unsolved",
	Title: "a situation has no operating point",
	Says:  "cannot be worked out",
	Doc: "The network was solved for every situation. One that collapses (constant-power loads ask for " +
		"more than the wires can carry), whose relays do not settle, or that did not converge is " +
		"reported with the place where it failed, and none of its numbers is used by any rule. It goes " +
		"by the situation's name.",
	Formula: "none",
	Limits:  "none",
	Why: "what collapses on paper resets, chatters or stalls in use; and nothing else could be " +
		"checked in this situation",
	Change: "look at the place named: thicker wires, fewer loads at once, a relay coil not fed " +
		"through its own contact",
	Severity: "danger when it collapses or chatters; fault when it did not converge",
	Source: "maximum power theorem: a feed gives most when the load has half of the source " +
		"voltage",
	Mend: MendWire,
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 40 W, behaves: constant power, at: rear, fed by: lamp fuse, wire: {size: 0.75 mm², length: 60 m}, returns to: frame}
`,
	Good: `
loads:
  tail lamp: {power: 5 W, behaves: constant power, at: rear, fed by: lamp fuse, wire: {size: 0.75 mm²}, returns to: frame}
`,
	Run: func(p *Pass) {
		type cause struct {
			status solve.Status
			at     *circuit.Node
		}
		failed := map[cause][]*solve.Solution{}
		var order []cause
		for _, s := range p.allSolutions() {
			if s.Status == solve.Converged || p.collapsesInSeries(s) {
				continue
			}
			c := cause{s.Status, s.At}
			if failed[c] == nil {
				order = append(order, c)
			}
			failed[c] = append(failed[c], s)
		}
		for n, c := range order {
			for _, s := range failed[c] {
				p.reportUnsolved(s, "", n+1)
			}
		}
		p.unsolvedCorners()
	},
}

// unsolvedCorners reports the situations that work at nominal and not at a worst
// corner.
func (p *Pass) unsolvedCorners() {
	if p.in.Corners == nil {
		return
	}
	for i := range p.allSolutions() {
		if s, state, failed := p.in.Corners.Unsolved(i); failed && !p.collapsesInSeries(s) {
			p.reportUnsolved(s, ", in the worst case ("+state.String()+")", 0)
		}
	}
}

// reportUnsolved reports a situation that failed; where says in which state, and
// cause is the same for those that failed alike.
func (p *Pass) reportUnsolved(s *solve.Solution, where string, cause int) {
	severity := finding.Danger
	if s.Status == solve.NotConverged {
		severity = finding.Fault
	}
	f := finding.Finding{Severity: severity, Part: s.Situation.Name, Ref: s.Situation.Name,
		Pos: s.Situation.Pos, Situation: s.Situation.Name, Cause: fmt.Sprint("cause ", cause)}
	f.What = fmt.Sprintf("%s%s: %s", s.Situation.Name, where, s.Status)
	if s.Why != "" {
		f.What += ", " + s.Why
	}
	if s.At != nil && len(s.At.Terminals) > 0 {
		f.Pos = s.At.Terminals[0].Part.Pos
	}
	if x := p.collapsedBehind(s); x != nil {
		f.Change = "ask less of " + x.Name + ", or fit a larger one: thicker wires help only where those between it and the load lose much"
	}
	for _, part := range p.partsOf(circuit.Load) {
		if l := accessory(part); l != nil && s.At != nil && loadBranch(part) != nil && loadBranch(part).A == s.At {
			p.isOfOther(&f, l)
		}
	}
	p.report(f)
}

// collapsedBehind is the converter behind which a situation collapses; nil = none.
func (p *Pass) collapsedBehind(s *solve.Solution) *circuit.Part {
	if s.At == nil {
		return nil
	}
	return p.c.ConverterOf(s.At)
}
