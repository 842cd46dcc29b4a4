package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var chargingFuseSmall = &Rule{
	Name:  "charging-fuse-small",
	Title: "a fuse of the charging system, a charger or a converter opens while that gives all it can",
	Says:  "opens at full output",
	Doc: "Each fuse between the charging system and the battery, where the design says its cable, against the greatest output of the " +
		"curve, which a battery that is low takes. When it opens with the engine running, the machine loses its battery: its regulator " +
		"lets the voltage jump, and what is on takes the load dump. The same of the fuses at the input and the output of a charger or converter, at its " +
		"rated current or that of its panels, where no situation has them carry more than they may.",
	Formula:  "greatest hot output, or rated current of a charger or converter, ≤ rating × the smaller of the practice's load share and the maker's; greatest cold output ≤ rating",
	Limits:   "as of fuse-under-load",
	Why:      "a machine that loses its battery at full output makes a load dump, which destroys electronics",
	Change:   "fit the next larger fuse that the cable allows",
	Severity: "fault; advice where only the cold output exceeds the rating",
	Source:   "makers' data sheets: continuous load against ambient; load dump: ISO 16750-2, 4.6.4 (from memory)",
	Mend:     MendFuse,
	InUse:    true,
	Bad: `
charging: {regulated: 14.3 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A, 6000 rpm: 28 A}, idle: 1300 rpm, cruise: 4000 rpm, hot derating: 0 %, at: rear, fed by: charge fuse, wire: {size: 6 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  charge fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
`,
	Mended: []string{"rating: 25 A", "rating: 40 A", "blade C, rating: 40", "blade E, rating: 40"},
	Run: func(p *Pass) {
		for part := range each[*design.Charger](p.facts) {
			for _, r := range p.chargerRated(part) {
				p.judgeChargerFuse(part, r)
			}
		}
		coldA, hotA := charging.MostA(&p.d.Charging)
		for _, b := range p.chargingCable() {
			if b.Kind != circuit.FuseBranch || fuseRating(b) <= 0 {
				continue
			}
			bears, rating := p.continuousA(b, 0), fuseRating(b)
			gives, limit, severity := hotA, bears, finding.Fault
			if !over(hotA, bears) {
				gives, limit, severity = coldA, math.Max(rating, bears), finding.Advice
			}
			if !over(gives, limit) {
				continue
			}
			fin := ofFuse(severity, b)
			atMost(&fin, "greatest output", gives, limit, "A")
			then := "and makes a load dump when it opens"
			if len(p.waysFromStudAll()) > 1 {
				then = "all of which a flat battery takes"
			}
			p.say(fin, "%s may carry %s; the charging system gives up to %s, %s", fuseText(b), amps(limit), amps(gives), then)
		}
	},
}

// judgeChargerFuse holds a fuse of a charger against what it carries at the rated current.
func (p *Pass) judgeChargerFuse(part *circuit.Part, r loaded) {
	b := r.branch
	if b.Kind != circuit.FuseBranch || fuseRating(b) <= 0 {
		return
	}
	limit := p.continuousA(b, 0)
	if !over(r.amps, limit) || p.judged(b, limit) {
		return
	}
	fin := ofFuse(finding.Fault, b)
	fin.Why = "it ages and opens on a warm day, and what the charger keeps full runs flat"
	if part.Converts() != nil {
		fin.Why = "it ages and opens on a warm day, and what the converter feeds is dead"
	}
	atMost(&fin, "rated current", r.amps, limit, "A")
	p.say(fin, "%s may carry %s; it carries %s while %s gives all it can", fuseText(b), amps(limit), amps(r.amps), part.Name)
}
