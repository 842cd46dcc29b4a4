package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var diodeOverload = &Rule{
	Name:  "diode-overload",
	Title: "a diode carries more than its rating",
	Says:  "over its rating",
	Doc: "The current of every diode in the situation where it is most, against the lasting forward current of its type. Its rating " +
		"holds for a diode with the cooling that its maker asks for; a bare one in a sleeve carries less.",
	Formula:  "I ≤ rating of the type",
	Limits:   "the diode type in the library",
	Why:      "it gets too hot and fails, mostly as a short: then the feeds that it kept apart are joined",
	Change:   "use a diode or isolator of a higher rating, or let it steer a relay's coil only",
	Severity: "fault",
	Source:   "makers' data sheets give an average forward current; common practice, no source, for the steady one",
	Bad: `
diodes:
  lamp diode: {type: silicon diode 1 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  work lamp: {power: 14 W, behaves: resistor, at: rear, fed by: lamp diode, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"silicon diode 1 A", "Schottky diode 10 A"},
	Run: func(p *Pass) {
		for part, d := range each[*design.Diode](p.facts) {
			for _, b := range part.Branches {
				if p.judgeDiode(part, b, d) {
					break
				}
			}
		}
	},
}

func (p *Pass) judgeDiode(part *circuit.Part, b *circuit.Branch, d *design.Diode) (said bool) {
	most, in := 0.0, ""
	for _, s := range p.usable {
		if a := math.Abs(s.BranchA[b.Index]); a > most {
			most, in = a, s.Situation.Name
		}
	}
	if _, hotA := charging.MostA(&p.d.Charging); over(hotA, d.Type.RatingA) && slices.Contains(p.fromStud(), b) {
		fin := ofPart(finding.Fault, part)
		fin.Figure = figure.New(hotA, d.Type.RatingA, "A", figure.Larger)
		p.say(fin, "%s, %s, is rated %s; the charging system gives up to %s for good, all of which a flat battery takes", part.Name, d.Type.Name, amps(d.Type.RatingA), amps(hotA))
		return true
	}
	if !over(most, d.Type.RatingA) {
		return false
	}
	fin := ofPart(finding.Fault, part)
	fin.Situation = in
	fin.Figure = figure.New(most, d.Type.RatingA, "A", figure.Larger)
	p.say(fin, "%s carries %s in %q; %s is rated %s", part.Name, amps(most), in, d.Type.Name, amps(d.Type.RatingA))
	return true
}
