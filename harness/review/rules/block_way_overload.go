package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var blockWayOverload = &Rule{
	Name:  "block-way-overload",
	Title: "a way of a block can carry more than its limit",
	Says:  "more current than the way may carry",
	Doc: "Each way's fuse against the limit of a way, since the fuse decides what the way can carry; a way " +
		"without a fuse by its largest current over the situations.",
	Formula:  "fuse rating (or current) ≤ way limit",
	Limits:   "`way limit` of the block, or its type's figure",
	Why:      "the way's clip and strip heat before the fuse opens, and the block melts",
	Change:   "fit a smaller fuse, or lead the load to a feed of its own",
	Severity: "fault",
	Source:   "the block's own figure",
	Mend:     MendBlock,
	Bad: `
blocks:
  rear: {way limit: 5 A, total limit: 30 A, at: rear, fed by: keyed feed, wire: {size: 1.5 mm²}, ways: {1: {type: blade C, fuse: 7.5 A}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rear 1, wire: {size: 1 mm²}, returns to: frame}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 15 A, spare: 10 A, supervised: no}
`,
	Good: `
blocks:
  rear: {way limit: 5 A, total limit: 30 A, at: rear, fed by: keyed feed, wire: {size: 1.5 mm²}, ways: {1: {type: blade C, fuse: 5 A}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rear 1, wire: {size: 1 mm²}, returns to: frame}
`,
	Run: func(p *Pass) {
		for part, bl := range each[*design.Block](p.facts) {
			p.judgeWays(part, bl)
		}
	},
}

func (p *Pass) judgeWays(part *circuit.Part, bl *design.Block) {
	limit := bl.WayLimitA()
	for _, w := range bl.Ways {
		t := part.Terminal(w.Number)
		if t == nil || limit <= 0 || w.Spare {
			continue
		}
		value, what, situation := 0.0, "carries", ""
		if w.Fuse != nil {
			value, what = w.Fuse.RatingA, "is fused at"
		} else if use := p.wayWorst(t); use.A > 0 {
			value, situation = use.A, use.situation()
		}
		if !over(value, limit) {
			continue
		}
		fin := ofPart(finding.Fault, part)
		fin.Part, fin.Pos = part.Name+" "+w.Number, w.Pos
		figure, most := quantity.Against(value, limit, quantity.Current)
		atMost(&fin, "way", value, limit, "A")
		fin.Situation = situation
		p.say(fin, "way %s of %s %s %s; a way may carry %s",
			w.Number, part.Name, what, figure, most)
	}
}

// wayWorst is the largest current out of a way.
func (p *Pass) wayWorst(t *circuit.Terminal) worst {
	for _, b := range t.Node.Branches {
		if b.Part == t.Part && b.B == t.Node {
			return p.branchWorst[b.Index]
		}
	}
	return worst{}
}
