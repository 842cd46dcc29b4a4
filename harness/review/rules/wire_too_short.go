package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var wireTooShort = &Rule{
	Name:  "wire-too-short",
	Title: "a wire is given shorter than the way through the runs",
	Doc: "Every wire whose length is given, against the shortest way through the runs between the places of its two " +
		"ends: in the runs it cannot be laid. Drop, heat and shorts are worked out with the length that is given.",
	Formula:  "length ≥ Σ lengths of the runs on its way",
	Limits:   "the lengths of the runs",
	Why:      "the wire that is really laid is longer: it loses more volts, and its fuse is slower in a short",
	Change:   "leave its length out, so that it follows from the runs, or mend the run or where its ends are",
	Severity: "advice, since a wire may be led beside the runs; fault below a tenth of the way, which is a slip of unit or decimal point",
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

// slip is the share of the way below which a length is one that no wire can have: a
// unit or a decimal point slipped (common practice, no source).
const slip = 0.1

func (p *Pass) judgeLength(w *circuit.Wire) {
	way := 0.0
	for _, b := range w.Route {
		way += b.Run.LengthM.Value
	}
	if !over(way, w.LengthM) {
		return
	}
	fin := ofWire(graver(over(slip*way, w.LengthM), finding.Advice, finding.Fault), w)
	atLeast(&fin, "length", w.LengthM, way, "m")
	p.say(fin, "%s is %s long, but its way from %s to %s is %s through the runs",
		w.Text(), p.length(w.LengthM), w.From.Part.Place.Name, w.To.Part.Place.Name, p.length(way))
}
