package rules

import (
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var autoResetBreaker = &Rule{
	Name:  "auto-reset-breaker",
	Title: "a breaker that resets by itself is where it must not be",
	Says:  "the breaker resets by itself",
	Doc: "Breakers with automatic reset, such as type I: on a boat everywhere; elsewhere where no other fuse or " +
		"breaker is upstream of it, and where it feeds a motor. PTCs stay open while there is voltage and are not judged.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "it cycles into the fault until somebody comes, and heats the wire each time; " +
		"a stopped winch or fan restarts under the hands of whoever looks for the cause",
	Change:   "fit a breaker with manual reset or a fuse",
	Severity: "fault; advice for a motor that runs only while a momentary switch is held",
	Source: "type I only together with another limiter such as a main fuse: SAE J553-2022 guide (one source); boats, manual " +
		"reset: 33 CFR 183.455(a) (one source); motors: common practice, no source",
	Bad: `
fuses:
  lamp fuse: {type: breaker type I, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}, stays live: "marks the parked machine"}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}, stays live: "marks the parked machine", own switch: true}
`,
	Mended: []string{"type I", "type III"},
	Run: func(p *Pass) {
		for _, b := range p.fuses() {
			if b.Fuse.Type == nil || b.Fuse.Type.Reset != "automatic" {
				continue
			}
			var wrong []string
			severity := finding.Fault
			if p.practice.Afloat {
				wrong = append(wrong, "a boat's breakers must be reset by hand")
			}
			if p.above(b) == nil {
				wrong = append(wrong, "no other fuse is upstream: it cycles on and off into a short")
			}
			if motor := p.motorBehind(b); motor != nil {
				if len(wrong) == 0 && p.onlyHeld(b) {
					severity = finding.Advice
				}
				wrong = append(wrong, "feeds "+motor.Name+": a motor may restart by itself")
			}
			if len(wrong) > 0 {
				fin := ofFuse(severity, b)
				fin.What = fuseText(b) + " resets by itself and " + strings.Join(wrong, "; ")
				p.report(fin)
			}
		}
	},
}

// motorBehind is the motor, no horn, that a branch lies on the way to, of several the first
// by name; nil without.
func (p *Pass) motorBehind(b *circuit.Branch) *circuit.Part {
	var first *circuit.Part
	for _, load := range p.c.BelowBranch(b).Loads {
		part := load.Part
		if l := accessory(part); l == nil || l.Behaves != design.Motor || l.Sign == design.SignHorn || load != loadBranch(part) {
			continue
		}
		if first == nil || part.Name < first.Name {
			first = part
		}
	}
	return first
}
