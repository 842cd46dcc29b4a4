package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
	"fusewright/harness/solve"
)

var voltageDrop = &Rule{
	Name:  "voltage-drop",
	Title: "too much voltage is lost between battery and load",
	Doc: "For every load that is on: the voltage at the battery's posts less the voltage at the load, so " +
		"feed and return together, with fuses, contacts and terminations, wires warm. The worst " +
		"situation is reported.",
	Formula: "drop = (V battery − V load) / nominal system voltage",
	Limits: "the practice's limit for critical or other loads; `limits: drop critical`, `drop " +
		"other` of the design",
	Why: "lamps dim, motors stall and heat, electronics reset, and the lost power heats the " +
		"wires",
	Change:   "use a thicker feed and return, or shorten them",
	Severity: "fault; danger for a critical load at more than twice its limit",
	Source:   "ABYC E-11: 3 % critical, 10 % other, of the nominal voltage (two sources)",
	Bad: `
loads:
  tail lamp: {power: 20 W, behaves: resistor, critical: yes, at: rear, fed by: lamp fuse, wire: {size: 0.75 mm², length: 9 m}, returns to: frame, return wire: {size: 1 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
`,
	Good: `
loads:
  tail lamp: {power: 20 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 0.75 mm², length: 9 m}, returns to: frame, return wire: {size: 1 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
`,
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			if b := loadBranch(part); b != nil {
				p.judgeDrop(part, b)
			}
		}
	},
}

// dropOf is what is lost between the battery's posts and a load's terminals.
func (f *facts) dropOf(s *solve.Solution, b *circuit.Branch) float64 {
	return s.NodeV[f.positive.Index] - s.NodeV[0] - s.Volts(b)
}

func (p *Pass) judgeDrop(part *circuit.Part, b *circuit.Branch) {
	l := accessory(part)
	limit, given := p.dropLimit(l.Critical)
	var at *solve.Solution
	worst := 0.0
	for _, s := range p.usable {
		if d := p.dropOf(s, b) / p.nominalV(); s.LoadOn[b.Index] && d > worst {
			worst, at = d, s
		}
	}
	if worst <= limit {
		return
	}
	severity, kind, key := finding.Fault, "other", "drop other"
	if l.Critical {
		kind, key = "critical", "drop critical"
		severity = graver(worst > 2*limit, finding.Fault, finding.Danger)
	}
	fin := ofPart(severity, part)
	fin.What = fmt.Sprintf("%s loses %s, %s of the system voltage, on its way; %s loads may lose %s",
		part.Name, volts(worst*p.nominalV()), share(worst), kind, share(limit))
	fin.Numbers = limited("drop", worst*100, limit*100, "%")
	fin.Situation = at.Situation.Name
	fin.Source = p.limitSource(key, given)
	p.report(fin)
}

// dropLimit is the share of the system voltage a load's circuit may lose, and
// whether the design sets it.
func (f *facts) dropLimit(critical bool) (limit float64, given bool) {
	q, limit := f.d.Limits.DropOther, f.practice.DropOther
	if critical {
		q, limit = f.d.Limits.DropCritical, f.practice.DropCritical
	}
	if q.Given() {
		return q.Value, true
	}
	return limit, false
}
