package rules

import (
	"fmt"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var noWayBack = &Rule{
	Name:  "no-way-back",
	Title: "a load has no return path to the battery",
	Says:  "no return path to the battery",
	Doc: "A load whose negative side is not joined to the battery's negative post: it names no return, " +
		"or the ground, fuse or contact it names leads nowhere. The loads of a ground that leads nowhere are " +
		"printed together. Coils are relay-never-energised.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "without a return nothing works, or the current finds its own way through another " +
		"load or a control cable",
	Change:   "name a ground as `returns to`, and run each ground block to the battery",
	Severity: "fault; danger for a critical load",
	Source:   "common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
`,
	Good: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: battery negative, return wire: {size: 1 mm²}}
`,
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			back := part.Terminal("-")
			if back == nil || p.cold[back.Node.Index] {
				continue
			}
			var ground *circuit.Part
			if w := wiresFrom(back); len(w) > 0 && (w[0].To.Part.Kind == circuit.Ground || w[0].To.Part.InReturn) {
				ground = w[0].To.Part
			}
			p.reportNoReturn(part, ground)
		}
	},
}

// reportNoReturn reports a load; ground is the one that it returns to and that
// leads nowhere, nil when it names none.
func (p *Pass) reportNoReturn(part, ground *circuit.Part) {
	l := accessory(part)
	fin := ofPart(graver(l != nil && l.Critical, finding.Fault, finding.Danger), part)
	fin.What = part.Name + " has no return path to the battery's negative post"
	if ground != nil {
		fin.Pos, fin.Cause = ground.Pos, ground.Name
		fin.What = fmt.Sprintf("%s %s goes nowhere, so %s has no return path", ground.Kind, ground.Name, part.Name)
	}
	p.report(fin)
}
