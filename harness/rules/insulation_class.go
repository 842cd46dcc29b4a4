package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
	"fusewright/library"
)

var insulationClass = &Rule{
	Name:  "insulation-class",
	Title: "a place is too hot for a wire's insulation",
	Doc: "The hottest place or run a wire meets against its insulation class less the practice's margin. " +
		"The wire's own heat is not counted here; it is in the allowed current, of which nothing is left: what the " +
		"wire carries all the same is wire-over-current. One finding a place and kind of wire.",
	Formula:  "ambient < class − margin: at that limit nothing is left for the wire's own heat",
	Limits:   "class from the library; the practice's margin to class",
	Why:      "the insulation softens, cracks and shorts even while the wire carries nothing",
	Change:   "use a wire of a higher class, or lead it away from the heat",
	Severity: "fault; danger at or above the class",
	Source:   "temperature classes of ISO 6722 and SAE J1128 (one source); margin of the practice",
	Bad: `
runs:
  - {from: battery tray, to: rear, length: 600 mm, near: {what: exhaust, ambient: 105 °C}}
accepted:
  - {rule: wire-over-current, part: tail lamp, reason: "shown for the place only"}
`,
	Good: `
wire: {insulation: ISO 6722 thin wall class C, size: 1 mm²}
runs:
  - {from: battery tray, to: rear, length: 600 mm, near: {what: exhaust, ambient: 95 °C}}
`,
	Run: func(p *Pass) {
		type cause struct {
			kind *library.WireType
			at   string
		}
		wires := map[cause][]*circuit.Wire{}
		var order []cause
		for _, w := range p.c.Wires {
			t := w.Spec.Type
			if t == nil || w.AmbientC < t.ClassC-p.practice.HotSpotMarginC {
				continue
			}
			c := cause{t, w.AmbientAt}
			if wires[c] == nil {
				order = append(order, c)
			}
			wires[c] = append(wires[c], w)
		}
		for _, c := range order {
			p.reportHotPlace(wires[c][0], len(wires[c]))
		}
	},
}

func (p *Pass) reportHotPlace(w *circuit.Wire, n int) {
	t := w.Spec.Type
	severity := finding.Fault
	if w.AmbientC >= t.ClassC {
		severity = finding.Danger
	}
	limit := t.ClassC - p.practice.HotSpotMarginC
	fin := ofWire(severity, w)
	fin.What = fmt.Sprintf("%s meets %s at %s; its insulation %s is of class %s, %s with the margin",
		wireText(w), celsius(w.AmbientC), w.AmbientAt, t.Name, celsius(t.ClassC), celsius(limit))
	if n > 1 {
		fin.What += fmt.Sprintf(" (and %s of this kind there)",
			plural(n-1, "other wire", "other wires"))
	}
	fin.Numbers = limited("ambient", w.AmbientC, limit, "°C")
	fin.Source = t.Source.String() + "; " + p.limitSource("margin to class K", false)
	p.report(fin)
}
