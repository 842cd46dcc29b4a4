package rules

import (
	"fmt"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var ringBelowStud = &Rule{
	Name:  "ring-below-stud",
	Title: "a ring does not fit its stud",
	Says:  "a ring that does not fit its stud",
	Doc: "Rings and forks that the design names at the end of a wire (`ends`), where the part has a stud of a size that the " +
		"design or the library gives. A smaller one does not go over the stud; a larger one sits on its rim. Where " +
		"nothing says what the stud is, nothing is judged.",
	Formula:  "hole of the ring = thread of the stud",
	Limits:   "the stud of the part in the library or the design",
	Why:      "drilled up, the rim is too thin for its current; too large a hole leaves a contact of a crescent, which gets hot and works loose",
	Change:   "use a ring for that stud",
	Severity: "fault; advice for a ring that is too large",
	Source:   "common practice, no source",
	Mend:     MendNot,
	Bad: `
blocks:
  rear: {type: fuse block 4 way blade C, at: rear, fed by: keyed feed, wire: {size: 1.5 mm², ends: {to: ring M4}}, ways: {1: {fuse: 5 A}, 2: spare, 3: spare, 4: spare}}
fuses: {}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rear 1, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"ring M4", "ring M5"},
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			p.judgeRing(w, w.From, w.FromEnd)
			p.judgeRing(w, w.To, w.ToEnd)
		}
	},
}

func (p *Pass) judgeRing(w *circuit.Wire, at *circuit.Terminal, end *library.Terminal) {
	if end == nil || at.KindAssumed {
		return
	}
	ring, stud := threadMm(end.Kind), threadMm(at.Kind)
	if ring == 0 || stud == 0 || ring == stud {
		return
	}
	fin := ofWire(graver(ring < stud, finding.Advice, finding.Fault), w)
	if ring < stud {
		atLeast(&fin, "hole", ring, stud, "mm")
	} else {
		atMost(&fin, "hole", ring, stud, "mm")
	}
	p.say(fin, "%s ends in %s at %s, whose stud is M%g", w.Text(), end.Name, at.Part.Name, stud)
}

// threadMm is the thread that a terminal kind is for, in mm: 8 of "ring M8"; 0 = of
// none.
func threadMm(kind string) (mm float64) {
	var shape string
	if n, _ := fmt.Sscanf(kind, "%s M%g", &shape, &mm); n < 2 {
		return 0
	}
	return mm
}
