package rules

import (
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var coilOnSupervised = &Rule{
	Name:  "coil-on-supervised",
	Title: "a relay's coil is fed from a supervised circuit",
	Says:  "coil on a supervised circuit",
	Doc: "A coil fed from a tap whose current a data-bus module watches (`supervised: yes`). Sources " +
		"disagree whether such an output will drive a coil, so the finding says to measure.",
	Formula: "none",
	Limits:  "none",
	Why: "the module may read the coil as a fault, switch the output off or store a fault code; a " +
		"dimmed output makes the relay chatter",
	Change:   "feed the coil from an unsupervised tap, or use a trigger with a high-impedance input",
	Severity: "fault",
	Source:   "two discussions of supervised outputs that disagree; common practice, no source",
	Bad: `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 10 A, spare: 3 A, supervised: yes}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  main fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: main fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  main fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: main fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`,
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Relay) {
			if tap := p.supervisedAbove(part); tap != nil {
				a := p.c.DrawA(p.coilOf[part.Index])
				fin := ofPart(finding.Fault, part)
				decidedBy(&fin, "coil current", a, "A", figure.Larger)
				p.say(fin, "the coil of %s draws %s from %s, a supervised circuit",
					part.Name, amps(a), tap.Name)
			}
		}
	},
}
