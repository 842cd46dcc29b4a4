package rules

import (
	"slices"

	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
)

var untinnedWire = &Rule{
	Name:  "untinned-wire",
	Title: "wires of a boat are not tinned",
	Says:  "not tinned",
	Doc: "Boats only: the wire types in use that the library does not know as tinned. One finding for the " +
		"design; wires of an unknown type are not judged.",
	Formula:  "none",
	Limits:   "the practice is afloat, such as marine; `tinned` of the wire type in the library",
	Why:      "salt water creeps under the insulation: bare strands turn black, and joints get hot where nobody looks",
	Change:   "use tinned boat wire, or seal every end with an adhesive-lined sleeve and look at them each season",
	Severity: "advice: tinned wire is recommended, not required",
	Source:   "ABYC E-11 recommends tinned conductors (from memory)",
	Bad: `
practice: marine
wire: {insulation: ISO 6722 thin wall class B, size: 1.5 mm²}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: battery negative}
`,
	Mended: []string{"ISO 6722 thin wall class B", "tinned marine 105 °C metric"},
	Run: func(p *Pass) {
		if !p.practice.Afloat {
			return
		}
		var types []string
		n := 0
		for _, w := range p.c.Wires {
			if t := w.Spec.Type; t != nil && !t.Tinned {
				n++
				types = append(types, t.Name)
			}
		}
		if n > 0 {
			slices.Sort(types)
			f := finding.Finding{Severity: finding.Advice, Part: "wires", Ref: "wires", Pos: p.d.SystemV.Pos}
			p.say(f, "%d of %s are not tinned: %s", n, wording.Count(len(p.c.Wires), "wire", "wires"), wording.And(slices.Compact(types)))
		}
	},
}
