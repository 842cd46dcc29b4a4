package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var tapOverSpare = &Rule{
	Name:  "tap-over-spare",
	Title: "more is drawn from a tap than it has to spare",
	Says:  "more drawn than it can spare",
	Doc: "The largest current out of each tap over all situations against the spare current the design " +
		"gives for it. A tap with a draw and no spare current given is data-missing.",
	Formula:  "current out of the tap ≤ spare",
	Limits:   "`spare` of the tap",
	Why:      "the factory fuse opens and takes the machine's own circuit with it",
	Change:   "use the tap for a relay's coil only and feed the load from the battery",
	Severity: "fault",
	Source: "body-builder guidance: total with the added load below the circuit's fuse and " +
		"weakest part (one source)",
	Bad: `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 10 A, spare: 300 mA, supervised: no}
`,
	Mended: []string{"spare: 300 mA", "spare: 1 A"},
	Run: func(p *Pass) {
		for part, t := range each[*design.Tap](p.facts) {
			if w := p.tapWorst(part); t.SpareA.Given() && over(w.A, t.SpareA.Value) {
				fin := ofPart(finding.Fault, part)
				value, most := quantity.Against(w.A, t.SpareA.Value, quantity.Current)
				atMost(&fin, "current", w.A, t.SpareA.Value, "A")
				fin.Situation = w.situation()
				p.say(fin, "%s gives %s and has %s to spare",
					part.Name, value, most)
			}
		}
	},
}

// tapWorst is the largest current through a tap.
func (p *Pass) tapWorst(part *circuit.Part) worst {
	var most worst
	for _, b := range part.Branches {
		if w := p.branchWorst[b.Index]; w.A > most.A {
			most = w
		}
	}
	return most
}
