package rules

import (
	"fmt"

	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var sensingRelayHunts = &Rule{
	Name:  "sensing-relay-hunts",
	Title: "a voltage-sensing relay opens and closes in turn",
	Says:  "opens and closes in turn",
	Doc: "Situations in which a voltage-sensing relay, closed, is pulled below the voltage at which it opens, " +
		"and, open, stands above that at which it closes. It waits before it closes again, so the situation is " +
		"checked with it open. It goes by the situation's name.",
	Formula: "none: the relay settles neither closed nor open",
	Limits:  "the relay's own voltages",
	Why: "its contacts wear, and the further battery is charged now and then only; until it opens the " +
		"first battery helps with the load",
	Change:   "more engine speed or less load meanwhile; or accept it where that lasts for minutes",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
batteries:
  house: {chemistry: AGM, capacity: 14 Ah, resistance: 16 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  house end: {type: blade C, rating: 20 A, at: rear, fed by: charging relay, wire: {size: 4 mm²}}
  pump end: {type: blade C, rating: 30 A, at: rear, fed by: house, wire: {size: 4 mm², length: 100 mm}}
relays:
  charging relay: {form: voltage-sensing relay, at: battery tray, fed by: start end, wire: {size: 4 mm², length: 100 mm}, coil: {returns to: frame, return wire: {size: 1 mm²}}}
loads:
  sprayer: {current: 22 A, behaves: resistor, duty: 10 %, on for: 1 min, every: 10 min, at: rear, fed by: pump end, wire: {size: 4 mm²}, returns to: house negative, return wire: {size: 4 mm²}, own switch: true}
situations:
  spraying: {engine: 1300 rpm, on: [sprayer]}
  riding: {engine: cruise, on: []}
`,
	Mended: []string{"current: 22 A", "current: 11 A", "engine: 1300 rpm", "engine: 6000 rpm"},
	Run: func(p *Pass) {
		for _, s := range p.in.Solutions {
			if s.Status == solve.Converged && s.Hunts != nil {
				p.reportHunting(s)
			}
		}
	},
}

func (p *Pass) reportHunting(s *solve.Solution) {
	fin := ofPart(finding.Advice, s.Hunts.Part)
	fin.Part, fin.Ref, fin.Situation = s.Situation.Name, s.Situation.Name, s.Situation.Name
	fin.Cause = fmt.Sprint("hunts ", s.Hunts.Part.Name)
	fin.Leave = true
	p.say(fin, "%s: %s opens and closes in turn, and is checked open", s.Situation.Name, s.Hunts.Part.Name)
}
