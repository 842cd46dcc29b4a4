package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/review/finding"
)

// surgeFactor is how far a diode's reverse voltage is to lie above the system's nominal one.
const surgeFactor = 3

var diodeReverseVoltage = &Rule{
	Name:  "diode-reverse-voltage",
	Title: "a diode stands too little voltage in reverse",
	Says:  "too little reverse voltage",
	Doc: "The reverse voltage of every diode's type against three times the nominal voltage of the system: less than the nominal " +
		"voltage itself breaks down at rest, less than three times when a coil or the charging system lets go.",
	Formula:  "reverse voltage ≥ 3 × nominal voltage",
	Limits:   "the diode type in the library",
	Why:      "a diode that breaks down is a short, and what it kept apart is joined",
	Change:   "use a diode of a higher reverse voltage, such as a silicon one of 100 V",
	Severity: "fault; advice at the nominal voltage or above",
	Source:   "common practice, no source; clamped load dump reaches 35 V on 12 V systems (ISO 16750-2, from memory)",
	Bad: `
system: 24 V
battery: {chemistry: AGM, capacity: 14 Ah, rate: 10 h, resistance: 20 mΩ, at: battery tray}
charging: {regulated: 28.6 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
diodes:
  lamp diode: {type: Schottky diode 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, rated at: 24 V, at: rear, fed by: lamp diode, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"Schottky diode 10 A", "silicon diode 3 A"},
	Run: func(p *Pass) {
		for part, d := range each[*design.Diode](p.facts) {
			nominal, v := p.d.NominalOf(d), d.Type.ReverseV
			if v >= surgeFactor*nominal {
				continue
			}
			fin := ofPart(graver(v < nominal, finding.Advice, finding.Fault), part)
			fin.Figure = figure.New(v, surgeFactor*nominal, "V", figure.Smaller)
			p.say(fin, "%s, %s, stands %s in reverse; %s is wanted at %s", part.Name, d.Type.Name, volts(v), volts(surgeFactor*nominal), volts(nominal))
		}
	},
}
