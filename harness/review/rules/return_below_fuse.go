package rules

import (
	"cmp"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var returnBelowFuse = &Rule{
	Name:  "return-below-fuse",
	Title: "a return wire carries less than the fuse of its feed lets through",
	Says:  "return thinner than the fuse needs",
	Doc: "A fault inside a load drives the current of the feed's fuse through the return. Every return " +
		"wire, and the wires of ground blocks beyond, must be good for the rating of the largest such fuse, or of one in series with it in the return. " +
		"A fault returns to the battery that drives it: the negative cable of a further battery must be good for the fuses of what it feeds and of its links, " +
		"and the return of a charger for the fuse through which the battery it charges can feed a short inside it. " +
		"One finding per wire, those of one fuse printed together. Current in normal use is judged by wire-over-current and ground-overload.",
	Formula:  "rating of the feed's fuse ≤ share × allowed current of the return wire",
	Limits:   "the practice's fuse share of wire, and its most fuse share of wire",
	Why:      "the feed survives the fault and the return burns in the same loom",
	Change:   "make the return as thick as the feed",
	Severity: "danger; advice up to the practice's most share of the allowed current (1.5), or up to what the wire carries at its class",
	Source: "46 CFR 111.50-3(a): a grounded conductor is protected by a suitable device in each ungrounded one of its circuit (one source); " +
		"33 CFR 183.455(c)(1): up to 150 % (one source); not above what the wire carries: this tool's own, stricter choice",
	Mend: MendWire,
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 30 A, at: rear, fed by: lamp fuse, wire: {size: 6 mm²}, returns to: frame, return wire: {size: 1 mm²}, stays live: "marks the parked machine", own switch: true}
`,
	Mended: []string{"size: 1 mm²", "size: 6 mm²"},
	Run: func(p *Pass) {
		p.wiresBelowTheirFuse(func(w *circuit.Wire) bool { return !isReturn(w) }, p.reportReturn)
	},
}

func (p *Pass) reportReturn(g guard, w *circuit.Wire) {
	a := p.allowed(w)
	fin := ofWire(p.letsThrough(w, g.A, finding.Danger), w)
	fin.Cause = fusePlace(g.fuse)
	fin.Change, fin.LimitSays = a.change(), a.limitSays()
	atMost(&fin, "fuse rating", g.A, p.practice.FuseWireShare*a.AllowedA, "A")
	fin.Source, fin.Unsourced = a.Source+"; "+p.limitSource("fuse share of wire", false), p.unsourced(a, g.A)
	what := cmp.Or(g.says, "its feed is")
	if g.says == "" && g.fuse.Returns() {
		what = "it is"
	}
	p.say(fin, "return %s may carry %s %s, but %s protected by %s", w.Text(), a.textFor(g.A), a.where(), what, g.text())
}
