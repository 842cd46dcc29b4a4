package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/review/finding"
)

var batteryNotCharged = &Rule{
	Name:     "battery-not-charged",
	Title:    "nothing charges a battery",
	Says:     "nothing charges it",
	Doc:      "Further batteries that are `fed by` nothing.",
	Formula:  "none",
	Limits:   "none",
	Why:      "it runs flat, and a lead battery left flat is soon spoilt",
	Change:   "name what charges it as `fed by`: the fuse at its end of the link to the first battery",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
batteries:
  house: {chemistry: AGM, capacity: 14 Ah, resistance: 12 mΩ, at: rear, returns to: frame, return wire: {size: 4 mm²}}
`,
	Good: linkEndUnfused.Mends(),
	Run: func(p *Pass) {
		for part, b := range each[*design.Bank](p.facts) {
			if len(b.FedBy) == 0 {
				p.say(ofPart(finding.Fault, part), "nothing charges %s", part.Name)
			}
		}
	},
}
