package rules

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

var fuseVoltage = &Rule{
	Name:  "fuse-voltage",
	Title: "a fuse is not rated for the system's voltage",
	Says:  "not rated for this voltage",
	Doc: "The voltage rating of each fuse, breaker or PTC against the nominal system voltage or the " +
		"regulated voltage, whichever is higher. Without a charging section the nominal voltage times 1.2 " +
		"counts, as lead-acid batteries are charged.",
	Formula: "voltage rating ≥ highest voltage in normal use",
	Limits:  "the fuse type's voltage rating",
	Why: "above its voltage a fuse may go on arcing after it has melted, so it does not break " +
		"the circuit",
	Change:   "fit a type rated for the voltage, such as 58 V blade fuses on a 48 V system",
	Severity: "danger",
	Source: "33 CFR 183.455(d) (one source); 32 V fuse-links not on a 48 V system: SAE J2576 " +
		"guide (one source); 14.4 V of 12 V, charging notes (two sources)",
	Mend: MendFuse,
	Bad: `
system: 48 V
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 40 mΩ, at: battery tray}
charging:
  regulated: 57 V
  output: {1300 rpm: 6 A, 3000 rpm: 10 A, 6000 rpm: 12 A}
  idle: 1300 rpm
  cruise: 4000 rpm
  hot derating: 0 %
`,
	Mended: []string{
		"system: 48 V", "system: 24 V",
		"resistance: 40 mΩ", "resistance: 20 mΩ",
		"regulated: 57 V", "regulated: 28.4 V",
	},
	Run: func(p *Pass) {
		for _, b := range p.fuses() {
			need := p.c.HighestAt(b.A)
			if t := b.Fuse.Type; t == nil || t.MaxV <= 0 || t.MaxV >= need {
				continue
			}
			fin := ofFuse(finding.Danger, b)
			atLeast(&fin, "voltage rating", b.Fuse.Type.MaxV, need, "V")
			p.say(fin, "%s of type %s is rated %s; the system reaches %s", fuseText(b),
				b.Fuse.Type.Name, quantity.Plain(b.Fuse.Type.MaxV, quantity.Voltage), voltsOver(need, b.Fuse.Type.MaxV))
		}
	},
}
