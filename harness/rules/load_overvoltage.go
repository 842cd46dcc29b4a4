package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
)

var loadOvervoltage = &Rule{
	Name:  "load-overvoltage",
	Title: "a load gets more than its maximum voltage",
	Doc: "For every load with a maximum voltage: the highest voltage at its terminals over the situations " +
		"in which it is on. Overvoltage of a failed regulator is not looked at here.",
	Formula:  "V load ≤ maximum voltage",
	Limits:   "`maximum voltage` of the load",
	Why:      "it ages fast or fails for good",
	Change:   "use a load rated for the charging voltage",
	Severity: "fault; danger for a critical load",
	Source:   "the load's own figure",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: constant power, maximum voltage: 13.5 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Good: `
loads:
  tail lamp: {power: 5 W, behaves: constant power, maximum voltage: 16 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			l := accessory(part)
			if l == nil || !l.MaxV.Given() {
				continue
			}
			if v, at := p.extremeV(part, 1); at != nil && v > l.MaxV.Value {
				fin := ofPart(graver(l.Critical, finding.Fault, finding.Danger), part)
				fin.What = fmt.Sprintf("%s gets %s and withstands %s",
					part.Name, volts(v), volts(l.MaxV.Value))
				fin.Numbers = limited("voltage", v, l.MaxV.Value, "V")
				fin.Situation = at.Situation.Name
				p.report(fin)
			}
		}
	},
}
