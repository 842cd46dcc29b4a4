package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var groundOverload = &Rule{
	Name:  "ground-overload",
	Title: "a shared ground point carries more than its limit",
	Doc: "The sum of the return currents that meet at each frame stud or ground block against the limit " +
		"that the design gives for it. A ground without a limit is not judged.",
	Formula:  "sum of return currents ≤ limit of the ground",
	Limits:   "`limit` of the ground",
	Why:      "the shared joint heats and loosens, and its drop couples every load on it",
	Change:   "split the returns over two grounds, or lead heavy returns to the battery",
	Severity: "fault",
	Source:   "the ground's own figure",
	Bad: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 2 A, frame resistance: 2 mΩ}
loads:
  tail lamp: {power: 30 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"limit: 2 A", "limit: 10 A"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Ground) {
			g, _ := part.Source.(*design.Ground)
			if g == nil || !g.LimitA.Given() {
				continue
			}
			if w := p.groundWorst(part); over(w.A, g.LimitA.Value) {
				fin := ofPart(finding.Fault, part)
				atMost(&fin, "current", w.A, g.LimitA.Value, "A")
				fin.Situation = w.situation()
				p.say(fin, "%s carries %s of returns; its limit is %s",
					part.Name, ampsOver(w.A, g.LimitA.Value), rated(g.LimitA.Value))
			}
		}
	},
}

// groundWorst is the largest sum of currents into a ground.
func (p *Pass) groundWorst(part *circuit.Part) worst {
	var most worst
	for _, s := range p.usable {
		sum := 0.0
		for _, t := range part.Terminals {
			for _, w := range wiresTo(t) {
				if a := s.Amps(w.Branch); !math.IsNaN(a) {
					sum += a
				}
			}
		}
		if sum > most.A {
			most = worst{sum, s}
		}
	}
	return most
}
