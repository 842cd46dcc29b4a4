package rules

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var insulationClass = &Rule{
	Name:  "insulation-class",
	Title: "a place is too hot for a wire's insulation",
	Says:  "too hot a place for its insulation",
	Doc: "The hottest place or run a wire meets against its insulation class less the practice's margin. " +
		"The wire's own heat is not counted here; it is in the allowed current, of which nothing is left: what the " +
		"wire carries all the same is wire-over-current. One finding per wire, those of a kind at a place printed together.",
	Formula:  "ambient < class − margin: at that limit nothing is left for the wire's own heat",
	Limits:   "class from the library; the practice's margin to class",
	Why:      "the insulation softens, cracks and shorts even while the wire carries nothing",
	Change:   "use a wire of a higher class, or route it away from the heat",
	Severity: "fault; danger at or above the class",
	Source:   "temperature classes of ISO 6722 and SAE J1128 (one source); margin of the practice",
	Mend:     MendWire,
	Bad: `
runs:
  - {from: battery tray, to: rear, length: 600 mm, near: {what: exhaust, ambient: 105 °C}, cover: heat sleeve}
accepted:
  - {rule: wire-over-current, part: tail lamp, severity: danger, figure: 495 mA of 0 A, reason: "shown for the place only"}
  - {rule: wire-over-current, part: tail lamp, severity: danger, figure: 495 mA of 0 A, reason: "shown for the place only"}
  - {rule: fuse-over-wire, part: tail lamp, severity: danger, figure: 5 A of 0 A, reason: "shown for the place only"}
  - {rule: return-below-fuse, part: tail lamp, severity: danger, figure: 5 A of 0 A, reason: "shown for the place only"}
`,
	Good: `
wire: {insulation: ISO 6722 thin wall class C, size: 1 mm²}
runs:
  - {from: battery tray, to: rear, length: 600 mm, near: {what: exhaust, ambient: 95 °C}, cover: heat sleeve}
`,
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			if t := w.Spec.Type; t != nil && w.AmbientC >= t.ClassC-p.practice.HotSpotMarginC {
				p.reportHotPlace(w)
			}
		}
	},
}

func (p *Pass) reportHotPlace(w *circuit.Wire) {
	t := w.Spec.Type
	limit := t.ClassC - p.practice.HotSpotMarginC
	fin := ofWire(graver(w.AmbientC >= t.ClassC, finding.Fault, finding.Danger), w)
	fin.Cause = w.AmbientAt + ", " + t.Name
	value, most := quantity.Against(w.AmbientC, limit, quantity.Temperature)
	atMost(&fin, "ambient", w.AmbientC, limit, "°C")
	fin.Source = t.Source.String() + "; " + p.limitSource("margin to class K", false)
	p.say(fin, "%s is in %s at %s; its insulation %s is class %s, %s with the margin",
		w.Text(), value, w.AmbientAt, t.Name, celsius(t.ClassC), most)
}
