package rules

import (
	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
)

var seriesMustBurn = &Rule{
	Name:  "series-must-burn",
	Title: "what must not fail is in series with another load",
	Says:  "goes out with another load",
	Doc: "Loads in series are dead together as soon as one of them, its plug or the wire between is open. Lamps that others steer or keep clear by " +
		"(those that the library says must burn, and lamps that the design calls critical) and other critical loads are looked for.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "one blown filament, and nobody sees the boat or the braking",
	Change:   "feed it by itself, with a lamp for the system voltage",
	Severity: "fault; advice for a critical load that is no lamp",
	Source:   "common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 10 W, rated at: 6 V, behaves: filament lamp, critical: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  plate lamp: {power: 10 W, rated at: 6 V, behaves: filament lamp, at: rear, in series with: tail lamp, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`,
	Mended: []string{", critical: yes", ""},
	Run: func(p *Pass) {
		for string := range p.strings() {
			for _, b := range string {
				l := accessory(b.Part)
				if !l.MustBurn() && !l.Critical {
					continue
				}
				fin := ofPart(graver(l.MustBurn(), finding.Advice, finding.Fault), b.Part)
				fin.Leave = true
				if !l.IsLamp() {
					fin.Change = "feed it by itself, at the voltage that it is rated for"
				}
				fin.Cause = string[0].Part.Name
				p.say(fin, "%s is dead when %s fails: they are in series", b.Part.Name, wording.Or(names(others(string, b))))
			}
		}
	},
}
