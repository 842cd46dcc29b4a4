package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
)

var studOnMovingPart = &Rule{
	Name:  "stud-on-moving-part",
	Title: "returns run through a bearing or hinge",
	Says:  "returns through a bearing or hinge",
	Doc: "A frame stud that returns lead to, at a place that moves against the frame (`moves: yes`), such as a fork, a " +
		"handlebar or a hinged panel, without a strap: `returns to` of the stud, by a wire to the frame or the battery.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "grease and wear part the metal: the current flickers, pits the races and hinge pins, or finds its way through " +
		"a cable's sheath",
	Change:   "bolt the return to the frame proper, or give the stud a flexible strap: `returns to` and its wire",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
places:
  battery tray: {ambient: 40 °C}
  rear: {ambient: 35 °C, moves: yes}
runs:
  - {from: battery tray, to: rear, length: 600 mm, cover: braided sleeve}
grounds:
  flap bolt: {kind: frame stud, at: rear, limit: 20 A, frame resistance: 5 mΩ}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: flap bolt}
`,
	Mended: []string{", moves: yes", ""},
	Run: func(p *Pass) {
		for part, g := range each[*design.Ground](p.facts) {
			if g.Kind != design.FrameStud || part.Place == nil || !part.Place.Moves || len(g.Returns) > 0 {
				continue
			}
			if from := p.returnsTo(part); len(from) > 0 {
				p.say(ofPart(finding.Fault, part), "%s sits on %s, which moves against the frame: the return of %s runs through its bearing or hinge",
					part.Name, part.Place.Name, wording.Few(from, 4))
			}
		}
	},
}
