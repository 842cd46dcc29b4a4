package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var blockOverload = &Rule{
	Name:  "block-overload",
	Title: "a block carries more than its total limit",
	Says:  "more current than the block may carry",
	Doc: "The sum of the currents out of all ways, in the situation where it is most, at nominal values, as is " +
		"likely and in the worst case, against the block's total limit.",
	Formula:  "Σ way currents ≤ total limit",
	Limits:   "`total limit` of the block, or its type's figure",
	Why:      "the input stud and bus bar heat although every way is within its limit",
	Change:   "share the loads between two blocks, or use a block with a higher total",
	Severity: "fault; advice when only the worst case exceeds the limit",
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
			if limit := bl.TotalLimitA(); limit > 0 {
				p.judgeStated(part, p.cornerAmps(part.Branches...), limit, "total current", "total current of %s: %s; its limit is %s")
			}
		}
	},
}

// judgeStated holds a part's current against a limit that is stated for it; the text
// takes its name, the current and the limit.
func (p *Pass) judgeStated(part *circuit.Part, of measure, limitA float64, name, text string) {
	v := p.held("stated limit", of, figure.Larger, limitA, limitA, always(finding.Fault))
	if v.severity == 0 {
		return
	}
	fin := ofPart(v.severity, part)
	v.decides(&fin, name, figure.Larger, 1, limitA, "A")
	p.say(fin, text, part.Name, v.split(against(limitA, quantity.Current)), rated(limitA))
}
