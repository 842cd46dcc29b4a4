package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var blockWayOverload = &Rule{
	Name:  "block-way-overload",
	Title: "a way of a block can carry more than its limit",
	Says:  "more current than the way may carry",
	Doc: "Each way's fuse against the limit of a way, since the fuse decides what the way can carry; a way " +
		"without a fuse by its largest current over the situations, at nominal values, as is likely and in the worst case.",
	Formula:  "fuse rating (or current) ≤ way limit",
	Limits:   "`way limit` of the block, or its type's figure",
	Why:      "the way's clip and strip heat before the fuse opens, and the block melts",
	Change:   "fit a smaller fuse, or give the load a feed of its own",
	Severity: "fault; advice when only the worst case takes a way without a fuse beyond its limit",
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
		fin := ofPart(finding.Fault, part)
		fin.Part, fin.Pos = part.Name+" "+w.Number, w.Pos
		if w.Fuse == nil {
			p.judgeWayUse(t, limit, fin)
		} else if rating := w.Fuse.RatingA; over(rating, limit) {
			value, most := quantity.Against(rating, limit, quantity.Current)
			atMost(&fin, "way", rating, limit, "A")
			p.say(fin, "way %s of %s is fused at %s; a way may carry %s", w.Number, part.Name, value, most)
		}
	}
}

// judgeWayUse holds the current out of a way without a fuse against its limit.
func (p *Pass) judgeWayUse(t *circuit.Terminal, limit float64, fin finding.Finding) {
	v := p.held("stated limit", p.wayAmps(t), figure.Larger, limit, limit, always(finding.Fault))
	if fin.Severity = v.severity; v.severity == 0 {
		return
	}
	v.decides(&fin, "way", figure.Larger, 1, limit, "A")
	_, most := quantity.Against(v.decisive(), limit, quantity.Current)
	p.say(fin, "way %s of %s carries %s; a way may carry %s", t.Name, t.Part.Name, v.split(against(limit, quantity.Current)), most)
}

// wayAmps is the current out of a way.
func (p *Pass) wayAmps(t *circuit.Terminal) measure {
	for _, b := range t.Node.Branches {
		if b.Part == t.Part && b.B == t.Node {
			return p.cornerAmps(b)
		}
	}
	return p.cornerAmps()
}
