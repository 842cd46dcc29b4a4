package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var switchVoltage = &Rule{
	Name:  "switch-voltage",
	Title: "a switch breaks a higher voltage than it is rated for",
	Says:  "breaks more volts than its rating",
	Doc: "Switches of a library type against the system's voltage, where they break half an ampere or more: with less no arc " +
		"holds. Within that voltage their ratings shrink above the 12 V class, which switch-overload counts. A switch with ratings of its own is " +
		"taken at them. Relays have their ratings at the voltage of their coil; fuses and breakers are fuse-voltage.",
	Formula:  "system voltage ≤ highest voltage that the switch may break",
	Limits:   "`break V` of the switch type in the library; 0.5 A (from memory)",
	Why:      "at a higher DC voltage the arc holds between the open contacts: it burns the switch and what it is mounted in",
	Change:   "use a switch rated for this DC voltage, or let it switch the coil of a relay that is",
	Severity: "danger",
	Source:   "FAA AC 43.13-1B Table 11-4 ends at 28 V (one source)",
	Bad: `
system: 48 V
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 48 mΩ, at: battery tray}
charging:
  regulated: 57.2 V
  output: {1300 rpm: 6 A, 3000 rpm: 10 A, 6000 rpm: 12 A}
  idle: 1300 rpm
  cruise: 4000 rpm
  hot derating: 0 %
fuses:
  heat fuse: {type: blade F 58 V, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
switches:
  heat switch: {type: sealed rocker 20 A, at: rear, fed by: heat fuse, wire: {size: 1 mm²}}
loads:
  heater: {power: 96 W, rated at: 48 V, behaves: resistor, at: rear, fed by: heat switch, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"type: sealed rocker 20 A", "rating: 20 A"},
	Run: func(p *Pass) {
		for part, s := range each[*design.Switch](p.facts) {
			v := p.d.NominalOf(s)
			if s.Type == nil || s.RatingA.Given() || !over(v, s.Type.BreakV) {
				continue
			}
			for _, b := range part.Branches {
				u := p.cornerAmps(b)(corner.AtNominal)
				if b.Closer == nil || u.in == nil || math.Abs(u.Nominal) < arcA {
					continue
				}
				fin := ofPart(finding.Danger, part)
				atMost(&fin, "system voltage", v, s.Type.BreakV, "V")
				fin.Situation = u.in.Name
				p.say(fin, "%s breaks %s at %s; a %s is rated to %s", part.Name, amps(u.Nominal), volts(v), s.Type.Name, volts(s.Type.BreakV))
			}
		}
	},
}

// arcA is from where an arc stands.
const arcA = 0.5
