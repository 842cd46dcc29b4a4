package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var blockOverload = &Rule{
	Name:  "block-overload",
	Title: "a block carries more than its total limit",
	Says:  "more current than the block may carry",
	Doc: "The sum of the currents out of all ways, in the situation where it is most, against " +
		"the block's total limit.",
	Formula:  "Σ way currents ≤ total limit",
	Limits:   "`total limit` of the block, or its type's figure",
	Why:      "the input stud and bus bar heat although every way is within its limit",
	Change:   "share the loads between two blocks, or use a block with a higher total",
	Severity: "fault",
	Source:   "the block's own figure",
	Mend:     MendBlock,
	InUse:    true,
	Bad: `
blocks:
  rear: {way limit: 5 A, total limit: 4 A, at: rear, fed by: keyed feed, wire: {size: 1.5 mm²}, ways: {1: {type: blade C, fuse: 5 A}, 2: {type: blade C, fuse: 5 A}}}
loads:
  left vest: {power: 30 W, behaves: resistor, at: rear, fed by: rear 1, wire: {size: 1 mm²}, returns to: frame}
  right vest: {power: 30 W, behaves: resistor, at: rear, fed by: rear 2, wire: {size: 1 mm²}, returns to: frame}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 10 A, spare: 8 A, supervised: no}
`,
	Mended: []string{"limit: 4 A", "limit: 10 A"},
	Run: func(p *Pass) {
		for part, bl := range each[*design.Block](p.facts) {
			limit := bl.TotalLimitA()
			if sum := p.blockWorst(part); limit > 0 && over(sum.A, limit) {
				fin := ofPart(finding.Fault, part)
				atMost(&fin, "total current", sum.A, limit, "A")
				fin.Situation = sum.situation()
				p.say(fin, "%s carries %s in all; its limit is %s",
					part.Name, ampsOver(sum.A, limit), rated(limit))
			}
		}
	},
}

// blockWorst is the largest sum of currents through a block's inner branches.
func (p *Pass) blockWorst(part *circuit.Part) worst {
	return p.worstOf(func(s *solve.Solution, add func(float64)) {
		for _, b := range part.Branches {
			add(math.Abs(s.Amps(b)))
		}
	})
}
