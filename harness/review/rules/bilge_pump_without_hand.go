package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var bilgePumpWithoutHand = &Rule{
	Name:  "bilge-pump-without-hand",
	Title: "a bilge pump runs by its float switch alone",
	Says:  "no switch to run it by hand",
	Doc: "Boats only: a bilge pump that a float switch starts must also be fed through a switch that a hand closes, round the " +
		"float switch. One without a float switch of the design is worked by hand, or has one inside.",
	Formula:  "none: it is a question of topology",
	Limits:   "the practice is afloat, such as marine",
	Why:      "a float switch that is stuck or fouled leaves the water in, and nobody can try the pump",
	Change:   "feed it a second time through a rocker at the helm, behind the same fuse",
	Severity: "advice",
	Source:   "common practice, no source; ABYC H-22 asks for a manual control beside an automatic one (from memory)",
	Bad: `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
loads:
  bilge pump: {type: bilge pump, at: rear, fed by: float switch, wire: {size: 1.5 mm², length: 400 mm}, returns to: battery negative, return wire: {size: 1.5 mm²}, stays live: "must run unattended"}
switches:
  float switch: {type: float switch 15 A, at: rear, fed by: pump fuse, wire: {size: 1.5 mm²}, stays live: "works the pump"}
fuses:
  pump fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}, stays live: "feeds the pump"}
`,
	Good: `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
loads:
  bilge pump: {type: bilge pump, at: rear, fed by: [float switch, pump by hand], wire: {size: 1.5 mm², length: 400 mm}, returns to: battery negative, return wire: {size: 1.5 mm²}, stays live: "must run unattended"}
switches:
  float switch: {type: float switch 15 A, at: rear, fed by: pump fuse, wire: {size: 1.5 mm²}, stays live: "works the pump"}
  pump by hand: {type: sealed rocker 20 A, at: rear, fed by: pump fuse, wire: {size: 1.5 mm²}, stays live: "works the pump"}
fuses:
  pump fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}, stays live: "feeds the pump"}
`,
	Run: func(p *Pass) {
		for _, part := range p.bilgePumps() {
			b := loadBranch(part)
			float, _ := p.switchesBefore(b.A)
			if float == "" || accessory(part).OwnSwitch || p.live(keyOff, isFloat).nodes[b.A.Index] || p.live(anything, isFloat).nodes[b.A.Index] {
				continue
			}
			p.say(ofPart(finding.Advice, part), "%s runs by %s alone: no switch feeds it by hand", part.Name, float)
		}
	},
}

// isFloat tells whether a contact is a float switch, see isFloatSwitch.
func isFloat(b *circuit.Branch) bool {
	if b.Part == nil {
		return false
	}
	s, ok := b.Part.Source.(*design.Switch)
	return ok && isFloatSwitch(s)
}
