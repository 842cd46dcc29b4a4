package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
)

var unfusedConductor = &Rule{
	Name:  "unfused-conductor",
	Title: "a conductor has no overcurrent protection",
	Doc: "From the battery's positive post every conductor is followed, through contacts as if closed, " +
		"down to the first fuse, breaker or PTC. A wire below which a load, a coil or a loose end is " +
		"reached without any is reported, once for the whole unfused circuit. A wire that does lead to " +
		"a fuse is judged by fuse-too-far instead. The machine's own wiring is not looked at.",
	Formula:  "none: it is a question of topology",
	Limits:   "none; a fuse anywhere on the way ends the search",
	Why:      "a short anywhere along it draws the battery's full current until the wire burns open",
	Change:   "put a fuse at the source end, sized for the smallest wire downstream",
	Severity: "danger always",
	Source: "33 CFR 183.455(a) and 46 CFR 111.50-5(a): a device in each ungrounded conductor, " +
		"where it receives its supply (one source)",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: battery, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 2 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Run: func(p *Pass) {
		for _, u := range p.unfusedWires() {
			if !u.fused {
				p.reportUnfused(u.wire)
			}
		}
	},
}

func (p *Pass) reportUnfused(w *circuit.Wire) {
	fin := ofWire(finding.Danger, w)
	more := 0
	p.below(w.To.Node, func(b *circuit.Branch) bool {
		if b.Wire != nil && !isReturn(b.Wire) {
			more++
		}
		return b.Feeds()
	})
	fin.What = fmt.Sprintf("%s has no fuse between the battery and its end", wireText(w))
	if more > 0 {
		fin.What += fmt.Sprintf(", nor have %s below it", plural(more, "wire", "wires"))
	}
	fin.Numbers = []finding.Number{{Name: "unfused length", Value: w.LengthM, Unit: "m"}}
	p.report(fin)
}
