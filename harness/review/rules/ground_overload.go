package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

var groundOverload = &Rule{
	Name:  "ground-overload",
	Title: "a shared ground point carries more than its limit",
	Says:  "more current than the stud may carry",
	Doc: "The sum of the return currents that meet at each frame stud or ground block, at nominal values, as is likely " +
		"and in the worst case, against the limit that the design gives for it. A ground without a limit is not judged.",
	Formula:  "sum of return currents ≤ limit of the ground",
	Limits:   "`limit` of the ground",
	Why:      "the shared joint heats and loosens, and its drop couples every load on it",
	Change:   "split the returns over two grounds, or run heavy returns to the battery",
	Severity: "fault; advice when only the worst case exceeds the limit",
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
			if g.LimitA.Given() {
				p.judgeStated(part, p.groundAmps(part), g.LimitA.Value, "current", "the returns at %s come to %s; its limit is %s")
			}
		}
	},
}

// groundAmps is the sum of the currents into a ground, as they flow.
func (p *Pass) groundAmps(part *circuit.Part) measure {
	return p.figureOf(1, nil, func(s *solve.Solution) float64 {
		sum := 0.0
		for _, t := range part.Terminals {
			for _, w := range wiresTo(t) {
				if a := s.Amps(w.Branch); !math.IsNaN(a) {
					sum += a
				}
			}
		}
		return sum
	})
}
