package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var diodeReversed = &Rule{
	Name:  "diode-reversed",
	Title: "a diode points against the current that it is to let through",
	Says:  "the wrong way round",
	Doc: "Every diode that the design says is `reversed`: its cathode is towards the feed, or in a return towards the load. It blocks " +
		"what it is to feed, and lets through from one circuit to the other what it is to keep apart.",
	Formula:  "none",
	Limits:   "none",
	Why:      "what is behind it has no power, and with two feeds the wrong one of them reaches the other circuit",
	Change:   "turn it round: the ring on the body, the cathode, is on the side away from the feed",
	Severity: "fault; danger for a critical load",
	Source:   "common practice, no source",
	Bad: `
diodes:
  lamp diode: {type: Schottky diode 10 A, at: battery tray, reversed: yes, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp diode, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"reversed: yes, ", ""},
	Run: func(p *Pass) {
		for part, d := range each[*design.Diode](p.facts) {
			if d.Reversed {
				p.reportReversedDiode(part)
			}
		}
	},
}

func (p *Pass) reportReversedDiode(part *circuit.Part) {
	draws := p.drawsOf(part.Branches[0])
	severity, what := finding.Fault, ""
	if len(draws) > 0 {
		what = ": it blocks the feed of " + wording.Few(names(draws), 4)
	}
	if slices.ContainsFunc(draws, func(b *circuit.Branch) bool { l := accessory(b.Part); return l != nil && l.Critical }) {
		severity = finding.Danger
	}
	p.say(ofPart(severity, part), "%s is the wrong way round%s", part.Name, what)
}
