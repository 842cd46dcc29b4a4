package rules

import (
	"slices"

	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

// sharedA is the current of a link between two batteries that is more than standby and leaks; our choice.
const sharedA = 0.1

var startBatteryShared = &Rule{
	Name:  "start-battery-shared",
	Title: "the start battery feeds a further battery's loads with the engine stopped",
	Says:  "feeds the other battery's loads",
	Doc: "In every situation with the engine stopped, the current that a link to a further battery carries away from the first one. " +
		"A situation that says of a switch in the link that it is `closed` is meant, and left out.",
	Formula:  "current of the link ≤ 0.1 A",
	Limits:   "0.1 A, more than standby and leaks: our choice",
	Why:      "the battery that has to start the engine runs flat with the other",
	Change:   "link them over a voltage-sensing relay, a diode isolator or a switch that is opened with the engine stopped",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
batteries:
  house: {chemistry: AGM, capacity: 14 Ah, resistance: 30 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  house end: {type: blade C, rating: 20 A, at: rear, fed by: start end, wire: {size: 4 mm²}}
  lamp end: {type: blade C, rating: 5 A, at: rear, fed by: house, wire: {size: 1 mm², length: 100 mm}}
loads:
  cabin lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp end, wire: {size: 1 mm²}, returns to: frame, own switch: true, stays live: "lights the camp"}
situations:
  at camp: {key: off, on: [cabin lamp]}
  riding: {engine: cruise, on: []}
`,
	Mended: []string{"fed by: start end, wire: {size: 4 mm²}", "fed by: charging relay, wire: {size: 4 mm²}", "loads:", `relays:
  charging relay: {form: voltage-sensing relay, at: battery tray, fed by: start end, wire: {size: 4 mm², length: 100 mm}, coil: {returns to: frame, return wire: {size: 1 mm²}}}
loads:`},
	Run: func(p *Pass) {
		for part, b := range p.links() {
			p.judgeLink(part, b)
		}
	},
}

func (p *Pass) judgeLink(part *circuit.Part, b *circuit.Branch) {
	way := p.c.Feeding(b.A)
	meant := func(s *solve.Solution) bool {
		return slices.ContainsFunc(p.c.Branches, func(x *circuit.Branch) bool {
			return way[x.Index] && x.Closer != nil && x.Closer.Switch != nil && slices.Contains(s.Situation.Closed, x.Closer.Switch)
		})
	}
	most := 0.0
	var worst *solve.Solution
	for _, s := range p.usable {
		// what one further battery gives another is not the first one's
		a := s.LinkA(p.c, b)
		if s.Situation.EngineRPM == 0 && a > most && !meant(s) {
			most, worst = a, s
		}
	}
	if !over(most, sharedA) {
		return
	}
	fin := ofPart(finding.Fault, part)
	fin.Situation = worst.Situation.Name
	fin.Figure = figure.New(most, sharedA, "A", figure.Larger)
	if slices.ContainsFunc(p.c.Sensing(b), func(x *circuit.Branch) bool { return worst.Closed[x.Index] }) {
		fin.Change = "use a DC-DC charger, or a relay that follows the engine: the volts at which a battery rests, or that a charger holds, keep the voltage-sensing relay closed"
	}
	p.say(fin, "the battery gives %s to %s and its loads in %q, with the engine stopped", amps(most), part.Name, fin.Situation)
}
