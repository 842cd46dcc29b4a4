package rules

import (
	"fmt"

	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var ringLegLost = &Rule{
	Name:  "ring-leg-lost",
	Title: "with one leg of a ring open, the rest is not enough",
	Says:  "not enough with one leg of the ring open",
	Doc: "Each fuse of a ring, or of feeds side by side, is taken out in turn, in every situation, and the whole is solved again. Reported when another fuse of the " +
		"ring then carries more than its rating, or when a load loses more than its limit of voltage drop that loses less with all in. Whether the wires bear what their " +
		"fuses let through is fuse-over-wire's.",
	Formula:  "current of each other fuse, one out ≤ its rating; drop, one out ≤ the practice's drop limit",
	Limits:   "the fuse's rating; the practice's drop, critical or other",
	Why:      "a ring is there so that one leg may fail; that it has shows only when the other one opens too",
	Change:   "choose fuses and wires of the ring for all that hangs on it, or leave the ring open and give each side a feed of its own",
	Severity: "advice: it takes a fuse that is out",
	Source:   "common practice, no source",
	Bad: `
fuses:
  left: {type: blade C, rating: 10 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
  right: {type: blade C, rating: 10 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
  joint: {type: blade C, rating: 10 A, at: rear, fed by: front bar, wire: {size: 2.5 mm², length: 500 mm}}
splices:
  front bar: {at: rear, fed by: left, wire: {size: 2.5 mm²}}
  rear bar: {at: rear, fed by: {right: 2.5 mm², joint: {size: 2.5 mm², length: 500 mm}}}
loads:
  front vest: {power: 70 W, behaves: resistor, at: rear, fed by: front bar, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}, own switch: true}
  rear vest: {power: 70 W, behaves: resistor, at: rear, fed by: rear bar, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}, own switch: true}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 20 A, spare: 15 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 37 A, 3000 rpm: 40 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
accepted:
  - {rule: back-feed, part: rear bar, reason: "a ring, both fuses are pulled before work"}
`,
	Mended: []string{"front vest: {power: 70 W", "front vest: {power: 40 W", "rear vest: {power: 70 W", "rear vest: {power: 40 W"},
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, leg := range p.in.Faults.Legs {
			p.judgeLegFuses(leg)
			p.judgeLegDrops(leg)
		}
	},
}

// judgeLegFuses reports the fuse that carries most of its rating, beyond it.
func (p *Pass) judgeLegFuses(leg *fault.Leg) {
	var worst fault.LegFuse
	ratio := func(x fault.LegFuse) float64 { return x.Amps / fuseRating(x.Fuse) }
	for _, x := range leg.Fuses {
		if x.Fuse != nil && x.Fuse != leg.Out && fuseRating(x.Fuse) > 0 && over(x.Amps, fuseRating(x.Fuse)) && (worst.Fuse == nil || ratio(x) > ratio(worst)) {
			worst = x
		}
	}
	if worst.Fuse == nil {
		return
	}
	fin := ofFuse(finding.Advice, worst.Fuse)
	fin.Leave, fin.Situation = true, worst.Situation.Name
	atMost(&fin, "current, one fuse out", worst.Amps, fuseRating(worst.Fuse), "A")
	fin.What = fmt.Sprintf("with %s out, %s carries %s and opens too", fuseText(leg.Out), fuseText(worst.Fuse), ampsOver(worst.Amps, fuseRating(worst.Fuse)))
	p.report(fin)
}

// judgeLegDrops reports the load that then loses most of its limit, beyond it, and did not before; what is dead
// then has no other feed in that situation.
func (p *Pass) judgeLegDrops(leg *fault.Leg) {
	var worst fault.LegLoad
	most, limit := 0.0, 0.0
	for _, x := range leg.Loads {
		if x.Load == nil {
			continue
		}
		may, _ := p.dropLimit(x.Load.Load.Load.Critical)
		nominal := p.c.NominalAt(x.Load.A)
		if share := x.LostV / nominal; share < leftByCoils && over(share, may) && !over(x.BeforeV/nominal, may) && share/may > most {
			worst, most, limit = x, share/may, may
		}
	}
	if worst.Load == nil {
		return
	}
	fin := ofPart(finding.Advice, worst.Load.Part)
	fin.Leave, fin.Situation, fin.Cause = true, worst.Situation.Name, fusePlace(leg.Out)
	atMost(&fin, "drop, one fuse out", 100*most*limit, 100*limit, "%")
	value, may := quantity.Against(most*limit, limit, quantity.Share)
	fin.What = fmt.Sprintf("with %s out, drop to %s: %s (limit %s)", fuseText(leg.Out), worst.Load.Part.Name, value, may)
	p.report(fin)
}
