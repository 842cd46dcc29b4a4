package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var seriesUneven = &Rule{
	Name:  "series-uneven",
	Title: "a load in series gets another share of the voltage than it is rated for",
	Says:  "wrong share of the voltage",
	Doc: "The current through loads in series is the same, and the voltage parts as they resist: of two unlike ones the weaker gets the more. For each, " +
		"the voltage at it, as a share of that at the battery's posts, against what it is rated at as a share of the system voltage; a system of 12 V runs " +
		"at 14 V, and so does a load made for it. A load that gets less is advised on, unless a resistor of the string is there to take the rest, or it " +
		"is one.",
	Formula:  "share = (V load / V battery) / (rated at / system voltage)",
	Limits:   "110 % of what it is rated for, 125 % of a motor; 80 %, as advice (our choice): a filament lives three tenths as long on 110 %, by the exponent −13 (from memory)",
	Why:      "what gets too much burns out and takes the others with it; what gets too little glows, does not pull in, or stalls",
	Change:   "take loads of equal power and voltage whose voltages add up to the system's, or feed each by itself",
	Severity: "fault; danger for a critical load; advice when it gets too little",
	Source:   "common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 10 W, rated at: 6 V, behaves: filament lamp, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  plate lamp: {power: 8.5 W, rated at: 6 V, behaves: filament lamp, at: rear, in series with: tail lamp, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`,
	Mended: []string{"power: 8.5 W", "power: 10 W"},
	Run: func(p *Pass) {
		for string := range p.strings() {
			for _, b := range string {
				p.judgeShare(b, string)
			}
		}
	},
}

// Shares of what a load in series is rated for between which it may lie.
const mostSeriesShare, mostMotorShare, leastSeriesShare = 1.1, 1.25, 0.8

func (p *Pass) judgeShare(b *circuit.Branch, string []*circuit.Branch) {
	rated := b.Load.RatedV / p.c.NominalAt(string[0].A)
	var most, least float64
	var in *solve.Solution
	for _, s := range p.allSolutions() {
		if s.Status != solve.Converged || !s.LoadOn[b.Index] {
			continue
		}
		// What wires lose is no matter of shares.
		share := s.LoadV(b) / (s.LoadV(b) + s.OthersV(b)) / rated
		if math.IsNaN(share) {
			continue
		}
		if in == nil || share > most {
			most, in = share, s
		}
		if least == 0 || share < least {
			least = share
		}
	}
	if in == nil {
		return
	}
	l := accessory(b.Part)
	fin := ofPart(graver(l.Critical, finding.Fault, finding.Danger), b.Part)
	share, figureOf, limit := most, "most", mostSeriesShare
	if b.Load.Behaves == design.Motor {
		limit = mostMotorShare
	}
	switch {
	case over(most, limit):
		atMost(&fin, "share of its rated voltage", 100*most, 100*limit, "%")
	case over(leastSeriesShare, least) && !drops(string):
		fin.Severity, share, figureOf, limit = finding.Advice, least, "least", leastSeriesShare
		atLeast(&fin, "share of its rated voltage", 100*least, 100*leastSeriesShare, "%")
	default:
		return
	}
	fin.Situation = in.Situation.Name
	got, bound := quantity.Against(share, limit, quantity.Share)
	p.say(fin, "in series with %s, %s gets %s of its share of the voltage; at %s %s: it is rated %s", wording.And(names(others(string, b))), b.Part.Name, got, figureOf, bound,
		volts(b.Load.RatedV))

}
