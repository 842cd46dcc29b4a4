package rules

import (
	"fmt"
	"slices"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
	"fusewright/harness/solve"
)

var loadNeverOn = &Rule{
	Name:  "load-never-on",
	Title: "a load is on in no situation",
	Doc: "Every check of currents, voltages and heat is made in the situations of the design. A load that draws " +
		"in none of them was not checked at all, nor were its wires, switch and fuse. A load that a " +
		"situation has on but that gets no voltage is another rule's matter.",
	Formula:  "none",
	Limits:   "none",
	Why:      "silence about this load would be taken for a check that was passed",
	Change:   "add the load to the situation in which it is used most heavily with others",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
situations:
  night: {engine: cruise, on: [tail lamp]}
`,
	Good: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
situations:
  night: {engine: cruise, on: [tail lamp, work lamp]}
`,
	Run: func(p *Pass) {
		able := p.live(anything, nil)
		for _, part := range p.partsOf(circuit.Load) {
			b := loadBranch(part)
			if b == nil || !able.nodes[b.A.Index] || !p.cold[b.B.Index] || p.draws(b) {
				continue
			}
			fin := ofPart(finding.Advice, part)
			fin.What = fmt.Sprintf("%s is on in no situation, so its current, voltage and fuse were not checked", part.Name)
			p.report(fin)
		}
	},
}

// draws tells whether a load is meant to be on, or draws, in any situation. One without a
// result counts as drawing: that there is none is said already.
func (f *facts) draws(b *circuit.Branch) bool {
	for _, s := range f.in.Solutions {
		if s.Status != solve.Converged || s.LoadOn[b.Index] || slices.Contains(s.Situation.On, b.Load.Load) {
			return true
		}
	}
	return false
}
