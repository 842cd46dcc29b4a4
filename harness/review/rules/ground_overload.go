package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var groundOverload = &Rule{
	Name:  "ground-overload",
	Title: "a shared ground point carries more than its limit",
	Says:  "more current than the stud may carry",
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
		for part, g := range each[*design.Ground](p.facts) {
			if w := p.groundWorst(part); g.LimitA.Given() && over(w.A, g.LimitA.Value) {
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
	return p.worstOf(func(s *solve.Solution, add func(float64)) {
		for _, t := range part.Terminals {
			for _, w := range wiresTo(t) {
				add(s.Amps(w.Branch))
			}
		}
	})
}
