package rules

import (
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseTypeInBlock = &Rule{
	Name:  "fuse-type-in-block",
	Title: "a block does not take the type of fuse put into it",
	Says:  "fuse of the wrong type",
	Doc: "Each way's fuse type against the type its block is made for. Blocks whose figures the design " +
		"gives itself have no type to compare with.",
	Formula:  "none",
	Limits:   "the block type's fuse type in the library",
	Why:      "the fuse does not fit, or is held loosely and heats its contact",
	Change:   "use the block's type of fuse, or another block",
	Severity: "fault",
	Source:   "ISO 8820-3: types C, E and F differ in body and blade size (two sources)",
	Mend:     MendWire,
	Bad: `
blocks:
  rear: {type: fuse block 4 way blade C, at: rear, fed by: keyed feed, wire: {size: 1.5 mm²}, ways: {1: {fuse: 5 A, type: blade F}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rear 1, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{", type: blade F", ""},
	Run: func(p *Pass) {
		for part, b := range each[*design.Block](p.facts) {
			if b.Type != nil && b.Type.FuseType != "" {
				p.judgeFuseTypes(part, b)
			}
		}
	},
}

func (p *Pass) judgeFuseTypes(part *circuit.Part, b *design.Block) {
	want := p.d.Library.FuseType(b.Type.FuseType)
	for _, w := range b.Ways {
		if w.Fuse == nil || w.FuseType == nil || w.FuseType == want ||
			want == nil && strings.EqualFold(w.FuseType.Name, b.Type.FuseType) {
			continue
		}
		fin := ofPart(finding.Fault, part)
		fin.Part, fin.Pos = part.Name+" "+w.Number, w.Pos
		p.say(fin, "way %s of %s holds a %s fuse; the block takes %s",
			w.Number, part.Name, w.FuseType.Name, b.Type.FuseType)
	}
}
