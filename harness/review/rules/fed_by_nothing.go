package rules

import (
	"fmt"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fedByNothing = &Rule{
	Name:  "fed-by-nothing",
	Title: "a part has no supply",
	Says:  "no supply",
	Doc: "A part that names no feed, or whose feed has no path to the battery even with every contact " +
		"closed: a spare way, a contact the relay does not have, a splice nobody feeds. What it " +
		"feeds in turn is named with it: one cause, one finding. Coils are relay-never-energised.",
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
		behind := map[*circuit.Part][]*circuit.Part{} // by the first without supply
		for _, part := range p.c.Parts {
			if in := part.Inlet(); in != nil && !live[in.Node.Index] {
				first := p.firstStarved(part, live)
				behind[first] = append(behind[first], part)
			}
		}
		for _, part := range p.c.Parts {
			if len(behind[part]) > 0 {
				p.reportUnfed(part, behind[part])
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

// reportUnfed is of a part that no supply reaches, which is among the starved itself.
func (p *Pass) reportUnfed(first *circuit.Part, starved []*circuit.Part) {
	fin := ofPart(finding.Fault, first)
	fin.What = first.Name + " has no `fed by`"
	if in := first.Inlet(); len(wiresTo(in)) > 0 {
		w := wiresTo(in)[0]
		fin.What = fmt.Sprintf("%s is fed by %s, which no supply reaches", first.Name, w.From.Text())
		fin.Pos = w.Pos
	}
	var behind []string
	for _, part := range starved {
		if l := accessory(part); l != nil && l.Critical {
			fin.Severity = finding.Danger
		}
		if part != first {
			behind = append(behind, part.Name)
		}
	}
	if n := len(behind); n > 0 {
		fin.What += fmt.Sprintf("; %s nothing by it: %s", wording.Count(n, "part gets", "parts get"), wording.Few(behind, fewLoads))
	}
	p.report(fin)
}
