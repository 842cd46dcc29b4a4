package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var wayWithoutFuse = &Rule{
	Name:  "way-without-fuse",
	Title: "a way of a fuse block has no fuse",
	Says:  "way without a fuse",
	Doc: "Ways that say `none` in a block with fuses in others, and have a load but no fuse up to it. Whether the wire is " +
		"protected by the fuse upstream is asked by the rules on fuses; a block without any fuse is a bus bar. A way to a " +
		"further fuse is the feed of that, and is left out.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "a short in that one branch opens the fuse of all of them",
	Change:   "put a fuse for the load's wire into the way",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
blocks:
  rear: {way limit: 10 A, total limit: 30 A, at: rear, fed by: keyed feed, wire: {size: 1.5 mm²}, ways: {1: {fuse: none}, 2: {type: blade C, fuse: 5 A}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rear 1, wire: {size: 1.5 mm²}, returns to: frame}
  side lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rear 2, wire: {size: 1.5 mm²}, returns to: frame}
`,
	Mended: []string{"1: {fuse: none}", "1: {type: blade C, fuse: 4 A}"},
	Run: func(p *Pass) {
		for part, bl := range each[*design.Block](p.facts) {
			if !slices.ContainsFunc(bl.Ways, func(w *design.Way) bool { return w.Fuse != nil }) {
				continue
			}
			for _, w := range bl.Ways {
				t := part.Terminal(w.Number)
				if t == nil || w.Fuse != nil || w.Spare {
					continue
				}
				if loads := p.unfusedBelow(t); len(loads) > 0 {
					fin := ofPart(finding.Advice, part)
					fin.Part, fin.Pos = part.Name+" "+w.Number, w.Pos
					p.say(fin, "way %s of %s has no fuse and feeds %s", w.Number, part.Name, wording.And(names(loads)))
				}
			}
		}
	},
}

// unfusedBelow are the loads behind a way that have no fuse nearer than the way itself.
func (p *Pass) unfusedBelow(t *circuit.Terminal) (list []*circuit.Branch) {
	own, _ := p.nearest.Above(t.Node)
	for _, b := range p.c.Below(t.Node).Loads {
		fuses, _ := p.nearest.Above(b.A)
		if accessory(b.Part) != nil && b == loadBranch(b.Part) && len(own) > 0 && slices.Equal(fuses, own) {
			list = append(list, b)
		}
	}
	return list
}
