package rules

import (
	"cmp"
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseGrading = &Rule{
	Name:  "fuse-grading",
	Title: "two fuses in series are too close in rating",
	Says:  "too close to the fuse upstream",
	Doc: "Each fuse against the next one towards the source, against those of parallel feeds together; of a ring each opens for its own end, and of a wire with a fuse at both ends, which feeds nothing between, either will do. When their ratings are close, either may " +
		"open first. One finding per downstream fuse, those behind one fuse printed together. Only ratings " +
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
			if up := p.above(b); up != nil && !(p.rings.In(b) && p.rings.In(up)) && !p.onlyThat(up, b) && fuseRating(up) > 0 && fuseRating(b) > 0 {
				p.judgeGrading(p.beside(up, b), b)
			}
		}
	},
}

// onlyThat tells whether all that a fuse feeds is behind another one: of the two ends of one wire it is the same which opens.
func (p *Pass) onlyThat(up, down *circuit.Branch) bool {
	return !up.Fuse.Factory && slices.Equal(p.drawsBelow(up.B), p.drawsBelow(down.B))
}

func (p *Pass) judgeGrading(up []*circuit.Branch, down *circuit.Branch) {
	rating, texts, together := 0.0, []string{}, ""
	for _, b := range up {
		rating += fuseRating(b)
		texts = append(texts, fuseText(b))
	}
	if rating >= p.practice.FuseRatio*fuseRating(down) {
		return
	}
	if len(up) > 1 {
		together = " together"
	}
	ratio := rating / fuseRating(down)
	fin := ofFuse(finding.Advice, down)
	fin.Cause = fusePlace(up[0])
	is, least := quantity.Against(ratio, p.practice.FuseRatio, quantity.Number)
	atLeast(&fin, "ratio of ratings", ratio, p.practice.FuseRatio, "")
	fin.Source = p.limitSource("fuse ratio", false)
	p.say(fin, "%s is downstream of %s,%s rated only %s times as high; the minimum is %s times",
		fuseText(down), wording.And(texts), together, is, least)
}

// beside are a fuse above another and those in parallel with it: they lead to one place
// by metal alone, so that they share what the lower one draws.
func (f *facts) beside(up, down *circuit.Branch) []*circuit.Branch {
	all := f.nearest[down.Index].Fuses
	if len(all) < 2 {
		return []*circuit.Branch{up}
	}
	joined := f.flood(up.B, func(b *circuit.Branch) bool { return b.Feeds() && b.Closer == nil && b.Kind != circuit.FuseBranch })
	list := slices.DeleteFunc(slices.Clone(all), func(b *circuit.Branch) bool { return !joined[b.B.Index] })
	slices.SortFunc(list, func(a, b *circuit.Branch) int { return cmp.Compare(fusePlace(a), fusePlace(b)) })
	return list
}
