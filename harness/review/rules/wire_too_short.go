package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var wireTooShort = &Rule{
	Name:  "wire-too-short",
	Title: "a wire is shorter than the route between its ends",
	Says:  "shorter than its route",
	Doc: "Every wire whose length is given, against how far the places of its two ends are apart: the run that joins " +
		"them, or of several runs the longest less the others, since a wire may be led beside them. Drop, heat and " +
		"shorts are worked out with the length that is given. One of a tenth of the route along the runs or less is asked about even so.",
	Formula:  "length ≥ longest run of its way − Σ lengths of the others, and > a tenth of the way",
	Limits:   "the lengths of the runs; a tenth: common practice, no source",
	Why:      "laid in the loom it does not reach, and the wire in its place is longer: it loses more volts, and its fuse is slower in a short",
	Change:   "leave its length out, so that it follows from the runs, or correct the run or where its ends are",
	Severity: "advice, since a run may wind and a wire be led beside it; fault below a tenth of the distance, which is a slip of unit or decimal point",
	Named:    true,
	Source:   "arithmetic on the design's own lengths; common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, returns to: frame}
`,
	Mended: []string{", length: 100 mm", ""},
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			if w.LengthGiven {
				p.judgeLength(w)
			}
		}
	},
}

// slip is the share of the distance below which a length is one that no wire can have: a
// unit or a decimal point slipped (common practice, no source).
const slip = 0.1

func (p *Pass) judgeLength(w *circuit.Wire) {
	apart, way := w.ApartM()
	switch {
	case w.TooShort():
		fin := ofWire(graver(over(slip*apart, w.LengthM), finding.Advice, finding.Fault), w)
		atLeast(&fin, "length", w.LengthM, apart, "m")
		p.say(fin, "%s is too short: %s, but by the runs %s and %s are %s apart", w.Text(), p.length(w.LengthM),
			w.From.Part.Place.Name, w.To.Part.Place.Name, p.length(apart))
	case way > 0 && !over(w.LengthM, slip*way):
		fin := ofWire(finding.Advice, w)
		atLeast(&fin, "length", w.LengthM, slip*way, "m")
		p.say(fin, "%s is %s long, but along the runs from %s to %s it is %s", w.Text(), p.length(w.LengthM),
			w.From.Part.Place.Name, w.To.Part.Place.Name, p.length(way))
	}
}
