package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseOverWire = &Rule{
	Name:  "fuse-over-wire",
	Title: "a fuse is larger than a wire it protects can carry",
	Says:  "fuse larger than the wire can carry",
	Doc: "For every feed wire the fuse that would open is found: the smallest on its way from the " +
		"battery; where feeds meet all of them, which open only when each carries too much. Behind a resistor that is rated to bear a dead short, no more than it lets through counts; at the charging system's own stud, beside the batteries, no more than its cold output. Its rating, or their sum, must not exceed the practice's share of what the wire may carry continuously " +
		"where it is laid, or for as long as its loads are on. Shorts are judged by short-overheats-wire, and an overload that the circuit can make (a stalled " +
		"motor, all loads at once) by overload-hurts-wire; an overload without a source is advice up to the practice's most share. " +
		"One finding per wire, those of one fuse printed together; return wires are " +
		"judged by return-below-fuse. A wire at a place as hot as its insulation may carry nothing, and no fuse " +
		"protects it; when it does carry current, wire-over-current speaks for both.",
	Formula: "rating ≤ share × allowed current; allowed current by heat balance or table, " +
		"whichever is less, with ambient, loaded wires in the run and cover",
	Limits: "the practice's fuse share of wire, and its most fuse share of wire",
	Why: "an overload between what the wire may carry and what the fuse opens at heats the wire " +
		"beyond its insulation",
	Change:   "fit a smaller fuse or a thicker wire",
	Severity: "danger; advice up to the practice's most share of the allowed current (1.5), or up to what the wire carries at its class",
	Source: "rating not above what the wire carries: this tool's own, stricter choice, as ABYC E-11 has it before its exception; " +
		"46 CFR 183.380(d) and ABYC allow the next standard rating up to 150 % of it, 33 CFR 183.455(c)(1) up to 150 % below 50 V (two sources); " +
		"FAA AC 43.13-1B par. 11-48 and Table 11-3 size wires above their breaker (one source)",
	Mend: MendWire,
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 30 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 6 mm²}, stays live: "marks the parked machine", own switch: true}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 30 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Run: func(p *Pass) { p.wiresBelowTheirFuse(isReturn, p.reportFuseOverWire) },
}

// wiresBelowTheirFuse reports, of the wires not skipped, each that may carry less
// than its fuse lets through.
func (p *Pass) wiresBelowTheirFuse(skip func(*circuit.Wire) bool, report func(guard, *circuit.Wire)) {
	for _, w := range p.c.Wires {
		if skip(w) || !p.overFused(w) {
			continue
		}
		report(p.guardOf(w), w)
		if p.allowed(w).Nothing() { // no fuse protects it
			p.standsAside(w, overloadHurtsWire, wireOverCurrent)
		} else {
			p.standsAside(w, overloadHurtsWire)
		}
	}
}

func (p *Pass) reportFuseOverWire(g guard, w *circuit.Wire) {
	a, share := p.allowed(w), p.practice.FuseWireShare
	fin := ofWire(p.letsThrough(w, g.A, finding.Danger), w)
	fin.Cause = fusePlace(g.fuse)
	fin.Change, fin.LimitSays = a.change(), a.limitSays()
	atMost(&fin, "fuse rating", g.A, share*a.AllowedA, "A")
	fin.Numbers = append(fin.Numbers, a.numbers()...)
	fin.Source, fin.Unsourced = a.Source+"; "+p.limitSource("fuse share of wire", false), p.unsourced(a, g.A)
	p.say(fin, "%s %s %s, which may carry %s %s",
		g.text(), g.verb("protects", "protect"), w.Text(), a.textFor(g.A), a.where())
}
