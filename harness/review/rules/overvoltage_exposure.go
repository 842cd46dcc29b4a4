package rules

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

var overvoltageExposure = &Rule{
	Name:  "overvoltage-exposure",
	Title: "a failed regulator's voltage is too high for a critical load",
	Says:  "not proof against a failed regulator",
	Doc: "The supply is raised to the long overvoltage that road equipment is tested with, in every " +
		"situation with the engine running; a load that none of them turns on is judged as if it were on. Reported for critical loads whose `maximum voltage` is below " +
		"what they then get. Loads that are not critical, and those of which nothing is said, are in the " +
		"fault table.",
	Formula:  "V load at 18 V (12 V systems) or 36 V (24 V systems) ≤ maximum voltage",
	Limits:   "`maximum voltage` of the load",
	Why:      "regulators fail by passing full output; everything that cannot withstand it is lost at once, under way",
	Change:   "use a load with a wider supply range, or a protector in its feed",
	Severity: "advice",
	Source:   "ISO 16750-2, long-term overvoltage 18 V or 36 V for 60 min (from memory)",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: constant power, critical: yes, maximum voltage: 16 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"voltage: 16 V", "voltage: 32 V"},
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, e := range p.in.Faults.Exposed {
			if !e.Over() || e.Branch.Load == nil || !e.Branch.Load.Load.Critical {
				continue
			}
			fin := ofPart(finding.Advice, e.Branch.Part)
			value, most := quantity.Against(e.HighV, e.BearsV, quantity.Voltage)
			atMost(&fin, "voltage", e.HighV, e.BearsV, "V")
			where := ", were it on: no situation with the engine running turns it on"
			if e.HighIn != nil {
				fin.Situation, where = e.HighIn.Name, ""
			}
			p.say(fin, "a regulator that fails high puts %s on %s; its maximum is %s%s",
				value, e.Branch.Part.Name, most, where)
		}
	},
}
