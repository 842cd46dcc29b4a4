package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
	"fusewright/harness/solve"
)

var situationUnsolved = &Rule{
	Name:  "situation-unsolved",
	Title: "a situation has no operating point",
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
		for _, s := range p.in.Solutions {
			if s.Status == solve.Converged {
				continue
			}
			c := cause{s.Status, s.At}
			if failed[c] == nil {
				order = append(order, c)
			}
			failed[c] = append(failed[c], s)
		}
		for _, c := range order {
			p.reportUnsolved(failed[c], "")
		}
		p.unsolvedCorners()
	},
}

// unsolvedCorners reports the first situation that works at nominal and not at
// a worst corner, with the count of the others.
func (p *Pass) unsolvedCorners() {
	if p.in.Corners == nil {
		return
	}
	var list []*solve.Solution
	words := ""
	for i := range p.in.Solutions {
		if s, state, failed := p.in.Corners.Unsolved(i); failed {
			if len(list) == 0 {
				words = ", in the worst case (" + state.String() + ")"
			}
			list = append(list, s)
		}
	}
	if len(list) > 0 {
		p.reportUnsolved(list, words)
	}
}

// reportUnsolved reports situations that failed alike; where says in which state.
func (p *Pass) reportUnsolved(list []*solve.Solution, where string) {
	s := list[0]
	severity := finding.Danger
	if s.Status == solve.NotConverged {
		severity = finding.Fault
	}
	f := finding.Finding{Severity: severity, Part: s.Situation.Name, Ref: s.Situation.Name,
		Pos: s.Situation.Pos, Situation: s.Situation.Name}
	f.What = fmt.Sprintf("%s%s: %s", s.Situation.Name, where, s.Status)
	if s.Why != "" {
		f.What += ", " + s.Why
	}
	if len(list) > 1 {
		f.What += fmt.Sprintf(" (and likewise in %s)",
			plural(len(list)-1, "other situation", "other situations"))
	}
	if s.At != nil && len(s.At.Terminals) > 0 {
		f.Pos = s.At.Terminals[0].Part.Pos
	}
	p.report(f)
}
