package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var crowdedStud = &Rule{
	Name:  "crowded-stud",
	Title: "too many terminals on one stud",
	Says:  "too many terminals on it",
	Doc: "The wires that end at a frame stud or a post of a battery, each with a ring terminal of its own. Ground blocks and " +
		"fuse blocks have a screw for each.",
	Formula:  "ring terminals ≤ 4 afloat, 5 ashore",
	Limits:   "four where the practice is afloat, five elsewhere",
	Why:      "a tall stack settles and works loose, and everything on it fails together",
	Change:   "fit a ground block or a bus bar, connected to the stud by one thick wire, or share the terminals out over two studs",
	Severity: "advice",
	Source:   "ABYC E-11: at most four terminals on a stud (two sources); ashore, where careful fitters put five small rings on one: common practice, no source",
	Bad: `
loads:
  lamp a: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  lamp b: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  lamp c: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  lamp d: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  lamp e: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  lamp f: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"  lamp f: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}\n", ""},
	Run: func(p *Pass) {
		for _, part := range p.c.Parts {
			if g, ok := part.Source.(*design.Ground); part.Kind != circuit.Battery && part.Kind != circuit.Bank && !(ok && g.Kind == design.FrameStud) {
				continue
			}
			for _, t := range part.Terminals {
				p.judgeStud(part, t)
			}
		}
	},
}

// How many ring terminals a stud holds. Source: ABYC E-11 (two sources) afloat; ashore
// common practice, no source.
const mostOnStudAfloat, mostOnStudAshore = 4, 5

// MostOnStud is how many ring terminals a stud holds, afloat or ashore.
func MostOnStud(afloat bool) int {
	if afloat {
		return mostOnStudAfloat
	}
	return mostOnStudAshore
}

func (p *Pass) judgeStud(part *circuit.Part, t *circuit.Terminal) {
	n, most := len(t.Wires)+len(t.Bolted()), MostOnStud(p.practice.Afloat)
	if n <= most {
		return
	}
	fin := ofPart(finding.Advice, part)
	fin.Figure = figure.New(float64(n), float64(most), "", figure.Larger)
	name := part.Name
	if part.Kind == circuit.Battery || part.Kind == circuit.Bank {
		name += " " + t.Name
	}
	p.say(fin, "%d ring terminals on %s; %d is the maximum on one stud", n, name, most)
}
