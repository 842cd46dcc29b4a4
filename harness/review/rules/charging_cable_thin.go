package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var chargingCableThin = &Rule{
	Name:  "charging-cable-thin",
	Title: "the charging cable does not carry what the machine gives",
	Says:  "carries less than the charging system gives",
	Doc: "Each wire between the charging system and the battery, where the design says its cable, against the greatest " +
		"output of the curve: a battery that is low takes it all, in whatever situation. Hot the machine gives it for good, cold for minutes. The same of the wires at the " +
		"input and the output of a charger, at its rated current or that of its panels, and of a converter at all wires before the fuses of what it feeds, since it drives its rating into a short for good, where no situation has them carry more than they may.",
	Formula:  "greatest output, or rated current of a charger, ≤ allowed current of the wire; at its input rated output power / efficiency / voltage there",
	Limits:   "the allowed current, as of wire-over-current",
	Why:      "the cable overheats after every start on a battery that is low, and no fuse opens",
	Change:   "use a thicker cable",
	Severity: "fault; advice where only the cold output is more than the wire may carry",
	Source:   "heat balance of one wire in still air, or the practice's table; the battery takes what it gets: common practice, no source",
	Mend:     MendWire,
	InUse:    true,
	Bad: `
charging: {regulated: 14.3 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A, 6000 rpm: 39 A}, idle: 1300 rpm, cruise: 4000 rpm, hot derating: 20 %, at: rear, fed by: charge fuse, wire: {size: 3 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  charge fuse: {type: blade E, rating: 40 A, at: battery tray, fed by: battery, wire: {size: 10 mm², length: 100 mm}}
accepted:
  - {rule: fuse-over-wire, part: charging, figure: 40 A of 34.9 A, reason: "shown for what the machine gives only"}
  - {rule: fuse-wire-curve, part: charging, severity: danger, figure: 5.75 s of 5 s, reason: "shown for what the machine gives only"}
`,
	Good: `
charging: {regulated: 14.3 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A, 6000 rpm: 39 A}, idle: 1300 rpm, cruise: 4000 rpm, hot derating: 20 %, at: rear, fed by: charge fuse, wire: {size: 6 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  charge fuse: {type: blade E, rating: 40 A, at: battery tray, fed by: battery, wire: {size: 10 mm², length: 100 mm}}
`,
	Run: func(p *Pass) {
		for part := range each[*design.Charger](p.facts) {
			for _, r := range p.chargerRated(part) {
				p.judgeChargerWire(part, r)
			}
		}
		coldA, hotA := charging.MostA(&p.d.Charging)
		for _, b := range p.chargingCable() {
			if b.Wire == nil {
				continue
			}
			a := p.allowed(b.Wire)
			if !a.known() || !over(coldA, a.AllowedA) {
				continue
			}
			gives, severity, long := hotA, finding.Fault, "for good"
			if !over(hotA, a.AllowedA) {
				gives, severity, long = coldA, finding.Advice, "until it is hot"
			}
			fin := ofWire(severity, b.Wire)
			atMost(&fin, "greatest output", gives, a.AllowedA, "A")
			p.say(fin, "%s may carry %s %s; the charging system gives up to %s %s", b.Wire.Text(), a.textFor(gives), a.where(), amps(gives), long)
		}
	},
}

// judgeChargerWire holds a wire of a charger against what it carries at the rated current.
func (p *Pass) judgeChargerWire(part *circuit.Part, r loaded) {
	if r.branch.Wire == nil {
		return
	}
	a := p.allowed(r.branch.Wire)
	if !a.known() || !over(r.amps, a.AllowedA) || p.judged(r.branch, a.AllowedA) {
		return
	}
	fin := ofWire(finding.Fault, r.branch.Wire)
	atMost(&fin, "rated current", r.amps, a.AllowedA, "A")
	p.say(fin, "%s may carry %s %s; it carries %s while %s gives all it can", r.branch.Wire.Text(), a.textFor(r.amps), a.where(), amps(r.amps), part.Name)
}
