package rules

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var plugWays = &Rule{
	Name:  "plug-ways",
	Title: "no housing of the plug's family has a way for each wire",
	Says:  "too few ways in the plug",
	Doc: "Each wire that ends at a part with a plug takes a way of it: the feeds and returns of a load, what " +
		"comes to a switch and what leaves it; of a connector in the loom, each wire that passes. The family must have a housing with that many ways or more.",
	Formula:  "wires at the part ≤ ways of the largest housing",
	Limits:   "`ways` of the connector family in the library",
	Why:      "two wires in one contact do not hold, and the one left over gets a joint that nobody planned",
	Change:   "use a family with larger housings, or join the wires at a splice before the plug",
	Severity: "fault",
	Source:   "the library's connector family; one wire a contact is common practice, no source",
	Mend:     MendPart,
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
switches:
  low: {rating: 10 A, at: rear, fed by: lamp fuse}
  high: {rating: 10 A, at: rear, fed by: lamp fuse}
loads:
  tail lamp: {power: 5 W, behaves: resistor, plug: open bullet, at: rear, fed by: [low, high], returns to: frame}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, plug: open bullet, at: rear, fed by: lamp fuse, returns to: frame}
`,
	Run: func(p *Pass) {
		for _, part := range p.c.Parts {
			plug := part.Plug
			if plug == nil || plug.Ways > 0 {
				continue
			}
			most := 0
			if len(plug.Family.Ways) > 0 {
				most = slices.Max(plug.Family.Ways)
			}
			fin := ofPart(finding.Fault, part)
			atMost(&fin, "ways", float64(plug.Needed), float64(most), "")
			fin.Source = plug.Family.Source.String()
			if part.Kind == circuit.Connector {
				fin.Change = p.forTooManyWires(p.c.InlineOf(part))
				p.say(fin, "%d wires pass %s; the largest housing of %s has %d ways", plug.Needed, part.Name, plug.Family.Name, most)
				continue
			}
			p.say(fin, "%d wires end at the plug of %s; the largest housing of %s has %d ways",
				plug.Needed, part.Name, plug.Family.Name, most)
		}
	},
}
