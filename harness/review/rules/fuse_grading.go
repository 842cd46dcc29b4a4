package rules

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseGrading = &Rule{
	Name:  "fuse-grading",
	Title: "two fuses in series are too near in rating",
	Says:  "too near the fuse above it",
	Doc: "Each fuse against the next one towards the source. When their ratings are near, either may " +
		"open first. One finding a downstream fuse, those behind one fuse printed together. Only ratings " +
		"are compared.",
	Formula:  "upstream rating ÷ downstream rating ≥ the practice's ratio",
	Limits:   "the practice's fuse ratio",
	Why:      "a fault in one branch can open the common fuse and take every other branch with it",
	Change:   "raise the upstream rating if its wire allows it, or lower the downstream one",
	Severity: "advice",
	Source: "selectivity by rating ratio, fuse application guidance (one source; blade fuses have " +
		"no published ratio of their own)",
	Mend: MendFuseAbove,
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 1.5 mm²}}
`,
	Mended: []string{"rating: 10 A", "rating: 5 A"},
	Run: func(p *Pass) {
		for _, b := range p.fuses() {
			up := p.above(b)
			if up != nil && fuseRating(up) > 0 && fuseRating(b) > 0 &&
				fuseRating(up) < p.practice.FuseRatio*fuseRating(b) {
				p.reportGrading(up, b)
			}
		}
	},
}

func (p *Pass) reportGrading(up, down *circuit.Branch) {
	ratio := fuseRating(up) / fuseRating(down)
	fin := ofFuse(finding.Advice, down)
	fin.Cause = fusePlace(up)
	is, least := quantity.Against(ratio, p.practice.FuseRatio, quantity.Number)
	atLeast(&fin, "ratio of ratings", ratio, p.practice.FuseRatio, "")
	fin.Source = p.limitSource("fuse ratio", false)
	p.say(fin, "%s stands behind %s: a ratio of %s, at least %s is wanted",
		fuseText(down), fuseText(up), is, least)
}
