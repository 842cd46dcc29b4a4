package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var tapOverSpare = &Rule{
	Name:  "tap-over-spare",
	Title: "more is drawn from a tap than it can spare",
	Says:  "more drawn than it can spare",
	Doc: "The largest current out of each tap over all situations, at nominal values, against the spare current the design " +
		"gives for it. A tap with a draw and no spare current given is data-missing.",
	Formula:  "current out of the tap ≤ spare",
	Limits:   "`spare` of the tap",
	Why:      "the factory fuse opens and takes the machine's own circuit with it",
	Change:   "use the tap for a relay's coil only; feed the load from the battery",
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
			if t.SpareA.Given() {
				p.judgeSpare(part, t.SpareA.Value)
			}
		}
	},
}

// judgeSpare holds what a tap gives against its spare, in which the margin is.
func (p *Pass) judgeSpare(part *circuit.Part, spareA float64) {
	v := p.held("spare of a tap", p.tapAmps(part), figure.Larger, spareA, math.Inf(1), always(finding.Fault))
	if v.severity == 0 {
		return
	}
	fin := ofPart(v.severity, part)
	v.decides(&fin, "current", figure.Larger, 1, spareA, "A")
	_, spare := quantity.Against(v.decisive(), spareA, quantity.Current)
	p.say(fin, "drawn from %s: %s; the tap can spare %s", part.Name, v.split(against(spareA, quantity.Current)), spare)
}

// tapAmps is the current through a tap: the largest of its branches.
func (p *Pass) tapAmps(part *circuit.Part) measure {
	return p.figureOf(1, nil, func(s *solve.Solution) float64 {
		most := 0.0
		for _, b := range part.Branches {
			if a := math.Abs(s.Amps(b)); a > most { // not of what is no number
				most = a
			}
		}
		return most
	})
}
