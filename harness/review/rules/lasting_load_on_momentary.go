package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var lastingLoadOnMomentary = &Rule{
	Name:  "lasting-load-on-momentary",
	Title: "a load meant to stay on is fed by a momentary switch",
	Says:  "on only while its switch is held",
	Doc: "Lamps, heaters and electronics without an `on for` or a duty that nothing but a momentary switch feeds, " +
		"directly or by a relay that does not latch. Motors, horns and the coils of contactors, which a " +
		"resistance without a type may be, are held by hand as a rule.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "it goes out when the hand lets go",
	Change:   "fit a maintained switch, or say with `on for` how long it is held on",
	Severity: "advice: a brake lamp or a gate is held on as it should be",
	Source:   "common practice, no source",
	Bad: `
switches:
  lamp button: {rating: 10 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, momentary: yes}
loads:
  fog lamp: {power: 10 W, behaves: resistor, symbol: lamp, at: rear, fed by: lamp button, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{", momentary: yes", ""},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			l, b := accessory(part), loadBranch(part)
			if b == nil || heldByHand(l) || l.HeatShare() < 1 || !p.letGo(b) {
				continue
			}
			at := slices.IndexFunc(p.usable, func(s *solve.Solution) bool {
				return s.Situation.EngineRPM > 0 && s.LoadOn[b.Index]
			})
			fin := ofPart(finding.Advice, part)
			if at >= 0 {
				fin.Situation = p.usable[at].Situation.Name
			}
			p.say(fin, "%s: on only while a momentary switch is held, and no short `on for` is given", part.Name)
		}
	},
}

// heldByHand tells whether a load is one that is held on as a rule.
func heldByHand(l *design.Load) bool {
	coil := l.Behaves == design.Resistor && l.Type == nil && l.Sign != design.SignLamp && l.Sign != design.SignLED
	return coil || l.Behaves == design.Motor || l.Sign == design.SignHorn
}
