package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/review/finding"
)

var hullReturn = &Rule{
	Name:  "hull-return",
	Title: "a boat's load returns through metal instead of a wire",
	Says:  "returns through the hull",
	Doc: "Boats only: a frame stud that loads or coils return to. What is mounted on the engine block and uses " +
		"it as its return is part of the engine and not of the design. One finding per return, those of one stud printed together.",
	Formula: "none",
	Limits:  "the practice is afloat, such as marine",
	Why: "current through a hull, a rail or a shaft corrodes it under water and makes every other metal part " +
		"a return",
	Change:   "run each return by wire to a ground block that is wired to the battery",
	Severity: "fault",
	Source:   "ISO 10133 and ABYC E-11: d.c. systems of two insulated wires, the hull no conductor (from memory)",
	Bad: `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
`,
	Good: `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: battery negative, return wire: {size: 1.5 mm²}}
`,
	Run: func(p *Pass) {
		if !p.practice.Afloat {
			return
		}
		for part, g := range each[*design.Ground](p.facts) {
			if g.Kind != design.FrameStud {
				continue
			}
			for _, t := range part.Terminals {
				for _, w := range wiresTo(t) {
					fin := ofWire(finding.Fault, w)
					fin.Cause = part.Name
					p.say(fin, "return %s ends at %s and goes on through metal, not a wire", w.Text(), part.Name)
				}
			}
		}
	},
}
