package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var sensingRelayCycles = &Rule{
	Name:  "sensing-relay-cycles",
	Title: "a sensing relay opens and closes in turn",
	Says:  "opens and closes in turn",
	Doc: "Situations in which the charging system lifts the voltage to the closing threshold with the relay open and cannot hold it above " +
		"the opening one with the relay closed. Such relays wait for seconds to minutes at either threshold, so they cycle slowly and come to no " +
		"harm. Everything else is worked out with it closed, when most current passes the link.",
	Formula:  "voltage sensed with the relay closed < opening voltage",
	Limits:   "the relay's thresholds",
	Why:      "the further battery is charged for some of the time only, and less than the budget says",
	Change:   "run less from the further battery in this situation, or raise the engine speed",
	Severity: "advice",
	Source:   "the relay's own thresholds; that it does no harm: common practice, no source",
	Bad: `
charging: {regulated: 14.3 V, output: {1300 rpm: 9 A, 3000 rpm: 24 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
batteries:
  house: {chemistry: AGM, capacity: 14 Ah, resistance: 12 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  house end: {type: blade C, rating: 20 A, at: rear, fed by: charging relay, wire: {size: 4 mm²}}
  lamp end: {type: blade C, rating: 20 A, at: rear, fed by: house, wire: {size: 2.5 mm², length: 100 mm}}
relays:
  charging relay: {form: voltage-sensing relay, at: battery tray, fed by: start end, wire: {size: 4 mm², length: 100 mm}, coil: {returns to: frame, return wire: {size: 1 mm²}}}
loads:
  heater: {power: 120 W, behaves: resistor, at: rear, fed by: lamp end, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}, own switch: true}
situations:
  at idle: {engine: idle, on: [heater]}
accepted:
  - {rule: charging-deficit, part: at idle, reason: "shown for the relay only"}
`,
	Mended: []string{"engine: idle, on", "engine: cruise, on", `accepted:
  - {rule: charging-deficit, part: at idle, reason: "shown for the relay only"}
`, ""},
	Run: func(p *Pass) {
		cycling := map[*circuit.Part][]string{}
		for _, s := range p.in.Solutions {
			if s.Cycles != nil {
				cycling[s.Cycles.Part] = append(cycling[s.Cycles.Part], s.Situation.Name)
			}
		}
		for part, relay := range each[*design.Relay](p.facts) {
			if in := cycling[part]; len(in) > 0 {
				fin := ofPart(finding.Advice, part)
				fin.Situation = in[0]
				p.say(fin, "%s opens and closes in turn in %s: closed, it senses less than the %s at which it opens; taken as closed",
					part.Name, wording.And(in), quantity.Format(relay.Form.DropOutV, quantity.Voltage))
			}
		}
	},
}
