package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var loadDump = &Rule{
	Name:  "load-dump",
	Title: "when the lithium battery switches itself off, the engine charges into nothing",
	Says:  "may leave the engine without a battery",
	Doc: "A first battery that has a protection of its own, in every situation with the engine running: whether another battery stays joined to the " +
		"charging system when it opens, as it does on too much current or voltage, or in the cold. A link that is open, a diode and a " +
		"charger join nothing.",
	Formula:  "none",
	Limits:   "none",
	Why:      "the voltage jumps until the regulator follows, up to 35 V with a clamped alternator and 79 to 101 V with another (12 V, ISO 16750-2, from memory): electronics and lamps that are on die",
	Change:   "keep a lead battery on the charging system and charge the lithium battery from it over a DC-DC charger; or fit a surge protector at the alternator",
	Severity: "advice: protections that open under way are rare where all is chosen well",
	Source:   "common practice, no source; pulse: ISO 16750-2 (from memory)",
	Bad: `
battery: {chemistry: LiFePO4, capacity: 40 Ah, board: 300 A, resistance: 6 mΩ, at: battery tray}
`,
	Good: `
battery: {chemistry: LiFePO4, capacity: 12 Ah, resistance: 6 mΩ, at: battery tray}
`,
	Run: func(p *Pass) {
		if p.battery == nil || p.d.Battery.BoardA() == 0 || !p.d.Charging.Present() {
			return
		}
		for _, s := range p.usable {
			if s.Situation.EngineRPM > 0 && !p.otherJoined(s) {
				fin := ofPart(finding.Advice, p.battery.Part)
				fin.Leave, fin.Situation = true, s.Situation.Name
				p.say(fin, "in %q no other battery is joined to the charging system when the battery's protection opens", s.Situation.Name)
				return
			}
		}
	},
}

// otherJoined tells whether a further battery is joined to the first one's post in a solution.
func (p *Pass) otherJoined(s *solve.Solution) bool {
	joined := circuit.Reach(p.c, func(b *circuit.Branch) bool { return b.Kind != circuit.DiodeBranch && s.Closed[b.Index] }, p.c.Positive())
	for _, post := range p.c.Posts()[1:] {
		if joined[post.Index] {
			return true
		}
	}
	return false
}
