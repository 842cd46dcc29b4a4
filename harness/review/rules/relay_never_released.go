package rules

import (
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var relayNeverReleased = &Rule{
	Name:  "relay-never-released",
	Title: "a relay can never be released",
	Says:  "never released",
	Doc: "The coil is energised with the key off and every switch open: no contact is between the " +
		"battery and the coil. What the relay feeds is then permanently live and is not reported again by " +
		"live-with-key-off. `stays live` on the relay excuses it.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "the relay switches nothing, its loads are always live, and the coil alone drains the " +
		"battery in days",
	Change:   "feed the coil from a tap that follows the key, or through a switch",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
fuses:
  main fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
relays:
  keyed: {form: mini make, at: battery tray, fed by: main fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: main fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: keyed, wire: {size: 1 mm²}, returns to: frame}
`,
	Good: `
fuses:
  main fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  keyed: {form: mini make, at: battery tray, fed by: main fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: pilot, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: keyed, wire: {size: 1 mm²}, returns to: frame}
`,
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Relay) {
			if !p.stuckOn[part.Index] || staysLive(part) {
				continue
			}
			fin := ofPart(finding.Fault, part)
			a := p.c.DrawA(p.coilOf[part.Index])
			decidedBy(&fin, "coil current", a, "A", figure.Larger)
			p.say(fin, "the coil of %s is energised with the key off and all switches open; nothing can release it",
				part.Name)
		}
	},
}
