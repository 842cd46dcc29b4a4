package rules

import (
	"fmt"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fedByNothing = &Rule{
	Name:  "fed-by-nothing",
	Title: "a part has no supply",
	Says:  "no supply",
	Doc: "A part that names no feed, or whose feed has no path to the battery even with every contact " +
		"closed: a spare way, a contact the relay does not have, a splice nobody feeds. What it " +
		"feeds in turn has the same cause and is printed with it. Coils are relay-never-energised.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "it cannot work, and what was meant may have been fed from somewhere else",
	Change:   "name the part that feeds it as `fed by`",
	Severity: "fault; danger for a critical load",
	Source:   "common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, at: rear, returns to: frame, return wire: {size: 1 mm²}}
`,
	Good: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}}
`,
	Run: func(p *Pass) {
		// what a reversed diode blocks is diode-reversed
		live := p.floodBy(p.c.Posts(), func(b *circuit.Branch, _ *circuit.Node) bool { return b.Feeds() })
		for _, part := range p.c.Parts {
			if in := part.Inlet(); in != nil && !live[in.Node.Index] {
				p.reportUnfed(part, p.firstStarved(part, live))
			}
		}
	},
}

// firstStarved is the first part on the way to a part that no supply reaches,
// itself when its feed comes from a live part or from none.
func (p *Pass) firstStarved(part *circuit.Part, live []bool) *circuit.Part {
	for range p.c.Parts { // parts that feed each other have no first
		up := starvedAbove(part, live)
		if up == nil {
			break
		}
		part = up
	}
	return part
}

func starvedAbove(part *circuit.Part, live []bool) *circuit.Part {
	for _, w := range wiresTo(part.Inlet()) {
		if up := w.From.Part.Inlet(); up != nil && !live[up.Node.Index] {
			return w.From.Part
		}
	}
	return nil
}

func (p *Pass) reportUnfed(part, first *circuit.Part) {
	severity := finding.Fault
	if l := accessory(part); l != nil {
		severity = graver(l.Critical, finding.Fault, finding.Danger)
	}
	fin := ofPart(severity, part)
	fin.Cause = first.Name
	fin.What = part.Name + " has no `fed by`"
	if in := part.Inlet(); len(wiresTo(in)) > 0 {
		w := wiresTo(in)[0]
		fin.What = fmt.Sprintf("%s is fed by %s, which no supply reaches",
			part.Name, w.From.Text())
		fin.Pos = w.Pos
	}
	p.report(fin)
}
