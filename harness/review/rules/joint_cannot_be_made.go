package rules

import (
	"fusewright/harness/design/figure"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var jointCannotBeMade = &Rule{
	Name:  "joint-cannot-be-made",
	Title: "no crimp part takes all wires of a joint",
	Says:  "a joint that cannot be made",
	Doc: "At a splice or tap all wires go into one crimp part, chosen by their copper together; a factory wire counts twice, as thick as " +
		"the thickest of ours. There must be one in the library. Where the design itself names the crimp part of a wire at a splice " +
		"of three or more, it must be none that joins two wires end to end.",
	Formula: "copper of all wires of the joint ≤ largest barrel",
	Limits:  "barrel range of the joints in the library; a butt splice takes two wires",
	Why: "wires that do not fit are cut down, or several are forced into one end of a part made for one each: such a joint gets hot " +
		"or comes apart",
	Change:   "bring thick wires together on a stud or a bus bar; of thin ones let the joint be chosen, or join two at a time",
	Severity: "fault where no part takes the copper, else advice",
	Source:   "the library's joints, ranges from memory",
	Bad: `
splices:
  pair: {at: rear, fed by: lamp fuse, wire: {size: 1 mm², ends: {to: butt splice red}}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: pair, wire: {size: 1 mm²}, returns to: frame}
  stop lamp: {power: 5 W, behaves: resistor, at: rear, fed by: pair, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{", ends: {to: butt splice red}", ""},
	Run: func(p *Pass) {
		for _, part := range p.c.Parts {
			if part.Kind != circuit.Splice && part.Kind != circuit.Tap {
				continue
			}
			for _, t := range part.Terminals {
				p.judgeJoint(part, t)
			}
		}
	},
}

func (p *Pass) judgeJoint(part *circuit.Part, t *circuit.Terminal) {
	switch butt := buttSpliced(t); {
	case t.Jointed && t.Joint == nil:
		most := 0.0
		for _, x := range p.c.Design.Library.Terminals {
			if x.Kind == circuit.JointEnd {
				most = max(most, x.MaxMm2)
			}
		}
		fin := ofPart(finding.Fault, part)
		if t.CopperMm2() > most {
			fin.Figure = figure.New(t.CopperMm2(), most, "mm²", figure.Larger)
		}
		p.say(fin, "%s of copper meet at %s; no crimp part of the library takes that", area(t.CopperMm2()), part.Name)
	case part.Kind == circuit.Splice && len(t.Wires) > 2 && butt != nil:
		fin := ofPart(finding.Advice, part)
		p.say(fin, "%s meet at %s; %s, which the design names for one, joins two", wording.Count(len(t.Wires), "wire", "wires"), part.Name, butt.Name)
	}
}

// buttSpliced is the part that joins two wires end to end which the design gives a wire at
// a terminal; nil = none.
func buttSpliced(t *circuit.Terminal) *library.Terminal {
	for _, w := range t.Wires {
		given := w.Spec.ToEnd
		if w.From == t {
			given = w.Spec.FromEnd
		}
		if given != nil && given.Kind == library.FlyingLeads {
			return given
		}
	}
	return nil
}
