package rules

import (
	"fusewright/harness/review/finding"
)

var resetsAtStart = &Rule{
	Name:  "resets-at-start",
	Title: "electronics reset while the engine is started",
	Says:  "resets while the engine is started",
	Doc: "Electronics with a minimum voltage that are on while the engine is started, in a situation that has the starter on or as they are with the engine running: what they get in mild " +
		"air from the full battery while the starter turns; the starter is the design's, or the library's for the " +
		"vehicle and its battery. Lamps dim for those seconds and are not judged. The dip of the first moment is deeper and is not judged: how long a device rides through " +
		"it is its maker's figure. What needs more than the full battery has at rest is load-undervoltage's.",
	Formula:  "V load while the starter turns ≥ minimum voltage",
	Limits:   "`minimum voltage` of the load, the design's or the library's; 5 % less where the starter is assumed (our choice)",
	Why:      "a plotter or radio that restarts is blind for a minute; a recorder may lose what it holds",
	Change:   "feed it from a tap that is dead while the engine is started, from a converter that holds its output, or switch it on after the start",
	Severity: "advice",
	Source:   "the load's own figure; currents of starters: library",
	Bad: `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 22 mΩ, at: battery tray}
loads:
  tail lamp: {power: 5 W, behaves: constant power, symbol: electronics, minimum voltage: 10.8 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"resistance: 22 mΩ", "resistance: 12 mΩ"},
	Run: func(p *Pass) {
		s := p.in.Cranking
		if s == nil || len(s.Cases) == 0 {
			return
		}
		for _, x := range s.Cases[0].Loads {
			if !s.Resets(x) {
				continue
			}
			needs := minimumV(x.Part)
			fin := ofPart(finding.Advice, x.Part)
			fin.Situation = x.In.Name
			atLeast(&fin, "voltage while the starter turns", x.Volts, needs, "V")
			p.say(fin, "%s gets %s while the engine is started; it needs %s", x.Part.Name, volts(x.Volts), volts(needs))
			if !over(needs, s.LeastV) { // a sound start would do
				p.standsAside(nil, starterDoesNotTurn)
			}
		}
	},
}
