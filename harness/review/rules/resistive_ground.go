package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var resistiveGround = &Rule{
	Name:  "resistive-ground",
	Title: "the path from a frame stud to the battery drops too much by itself",
	Says:  "drops too much by itself",
	Doc: "The current through each frame stud whose resistance to the battery the design gives, in the situation where " +
		"it is most, times that resistance, against the whole drop that the loads returning there may have.",
	Formula: "I · frame resistance / nominal system voltage ≤ limit of voltage drop",
	Limits:  "as voltage-drop: the tighter where a critical load returns to the stud",
	Why: "no wire fixes it: the metal, its bearings and its rubber mounts take the volts, and a large current looks for " +
		"cables and bearings to return by",
	Change:   "fit a strap from the engine or frame part to the battery's negative, or return by a wire",
	Severity: "fault",
	Source:   "ABYC E-11: 3 % critical, 10 % other, of the nominal voltage, feed and return together (two sources)",
	Bad: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 0.65 Ω}
loads:
  tail lamp: {power: 24 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
accepted:
  - {rule: voltage-drop, part: tail lamp, figure: 15 % of 10 %, reason: "shown for its ground only"}
`,
	Mended: []string{"0.65 Ω", "5 mΩ", `accepted:
  - {rule: voltage-drop, part: tail lamp, figure: 15 % of 10 %, reason: "shown for its ground only"}
`, ""},
	Run: func(p *Pass) {
		for part, g := range each[*design.Ground](p.facts) {
			if g.Kind == design.FrameStud && g.FrameOhm.Given() {
				p.judgeFrame(part, g)
			}
		}
	},
}

func (p *Pass) judgeFrame(part *circuit.Part, g *design.Ground) {
	for _, b := range part.Branches {
		w := p.cornerAmps(b)(corner.AtNominal)
		limit, given := p.dropLimit(p.criticalOn(part))
		drop := math.Abs(w.Nominal) * g.FrameOhm.Value / p.d.NominalV()
		if w.in == nil || !over(drop, limit) {
			continue
		}
		fin := ofPart(finding.Fault, part)
		value, most := quantity.Against(drop, limit, quantity.Share)
		atMost(&fin, "drop", 100*drop, 100*limit, "%")
		fin.Situation = w.in.Name
		if given {
			fin.Source = "limit set by the design"
		}
		p.say(fin, "at %s, the %s from %s to the battery drops %s, %s of the system voltage; the limit for the whole path is %s",
			amps(w.Nominal), quantity.Plain(g.FrameOhm.Value, quantity.Resistance), part.Name, volts(drop*p.d.NominalV()), value, most)
	}
}

// criticalOn tells whether a critical load returns to a ground.
func (p *Pass) criticalOn(ground *circuit.Part) bool {
	for _, t := range ground.Terminals {
		for _, w := range wiresTo(t) {
			if l := accessory(w.From.Part); l != nil && l.Critical {
				return true
			}
		}
	}
	return false
}

// returnsTo names the parts whose returns end at a ground.
func (p *Pass) returnsTo(ground *circuit.Part) []string {
	var list []*circuit.Branch
	for _, t := range ground.Terminals {
		for _, w := range wiresTo(t) {
			list = append(list, w.From.Part.Branches...)
		}
	}
	return names(list)
}
