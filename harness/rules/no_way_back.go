package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
)

var noWayBack = &Rule{
	Name:  "no-way-back",
	Title: "a load has no way back to the battery",
	Doc: "A load whose negative side is not joined to the battery's negative post: it names no return, " +
		"or the ground it names leads nowhere. A ground that leads nowhere is reported once, with the " +
		"loads that depend on it. Coils are relay-never-energised.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "without a return nothing works, or the current finds its own way through another " +
		"load or a control cable",
	Change:   "name a ground as `returns to`, and lead each ground block to the battery",
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
		grounds := map[*circuit.Part][]*circuit.Part{}
		for _, part := range p.partsOf(circuit.Load) {
			back := part.Terminal("-")
			if back == nil || p.cold[back.Node.Index] {
				continue
			}
			if w := wiresFrom(back); len(w) > 0 && w[0].To.Part.Kind == circuit.Ground {
				grounds[w[0].To.Part] = append(grounds[w[0].To.Part], part)
				continue
			}
			p.reportNoReturn(part)
		}
		for _, g := range p.partsOf(circuit.Ground) {
			if loads := grounds[g]; len(loads) > 0 {
				p.reportLooseGround(g, loads)
			}
		}
	},
}

func (p *Pass) reportNoReturn(part *circuit.Part) {
	l := accessory(part)
	fin := ofPart(graver(l != nil && l.Critical, finding.Fault, finding.Danger), part)
	fin.What = part.Name + " has no way back to the battery's negative post"
	p.report(fin)
}

func (p *Pass) reportLooseGround(g *circuit.Part, loads []*circuit.Part) {
	severity := finding.Fault
	var who []string
	for _, l := range loads {
		who = append(who, l.Name)
		if a := accessory(l); a != nil && a.Critical {
			severity = finding.Danger
		}
	}
	fin := ofPart(severity, g)
	fin.What = fmt.Sprintf("ground %s leads nowhere, so %s %s no way back", g.Name, few(who, 4),
		map[bool]string{true: "has", false: "have"}[len(who) == 1])
	p.report(fin)
}
