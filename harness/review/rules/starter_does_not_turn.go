package rules

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/cranking"
)

var starterDoesNotTurn = &Rule{
	Name:  "starter-does-not-turn",
	Title: "the battery cannot turn the starter",
	Says:  "does not turn the engine",
	Doc: "The posts of the full battery while the starter draws its current, the first moment left out, in mild air. A design without " +
		"a starter is judged with the library's that suits the vehicle and its battery. How well one turns is load-undervoltage's; the study has " +
		"the cold and a battery run down too.",
	Formula:  "V posts = V at rest − I starter · R battery, less what else is on",
	Limits:   "the voltage at the posts below which no starter turns, 1 V: our choice",
	Why:      "the engine does not start: whoever is out with it is stranded",
	Change:   "fit a battery that is rated for the starter's current; check the resistance as written, and measure a battery that is old",
	Severity: "fault; advice where the starter is assumed",
	Named:    true,
	Source:   "Ohm's law; currents of starters: library",
	Bad: `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 130 mΩ, at: battery tray}
`,
	Mended: []string{"resistance: 130 mΩ", "resistance: 12 mΩ"},
	Run: func(p *Pass) {
		s := p.in.Cranking
		if s == nil || len(s.Cases) == 0 || p.battery == nil || s.Cases[0].Turns() {
			return
		}
		k := s.Cases[0]
		fin := ofPart(graver(s.Start.Assumed, finding.Fault, finding.Advice), p.battery.Part)
		atLeast(&fin, "voltage at the posts", k.PostsV, cranking.LeastTurningV, "V")
		p.say(fin, "the battery does not turn the engine: %s draws %s, and the posts of the full battery, of %s inside, fall to %s",
			starterName(s.Start), amps(k.CurrentA), quantity.Format(p.battery.Ohm, quantity.Resistance), volts(k.PostsV))
	},
}

// starterName is a starter in a sentence.
func starterName(s battery.Start) string {
	if s.Assumed {
		return s.Starter + ", the usual one for such a battery,"
	}
	return s.Starter
}
