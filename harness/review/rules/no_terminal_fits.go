package rules

import (
	"fmt"

	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var noTerminalFits = &Rule{
	Name:  "no-terminal-fits",
	Title: "no terminal fits the wire at this part",
	Says:  "no terminal fits",
	Doc: "Each wire end: a terminal that the design names must take the conductor's area in its barrel; " +
		"where it names none, the library must hold one of the kind the part needs for that area. An " +
		"end whose kind is not known is not judged. At a plug the area must also be in the range of the " +
		"connector family, whose seals and housings take no other. A lead that is spliced for want of a plug is no thicker than what goes into the contacts that its type has.",
	Formula: "least area ≤ conductor area ≤ largest area of the barrel",
	Limits:  "barrel range of the terminals in the library",
	Why: "a barrel too large does not grip and one too small is cut down until it does not " +
		"carry",
	Change: "use another size of wire, another terminal, or a short tail of the right size with a " +
		"splice",
	Severity: "fault",
	Source:   "size guides of insulated terminals, ranges in AWG (two sources), in mm² from memory",
	Mend:     MendPlug,
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm², ends: {from: ring M4 yellow}}, returns to: frame}
`,
	Mended: []string{", ends: {from: ring M4 yellow}", ""},
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			if w.Spec.Size == nil {
				continue
			}
			p.judgeEnd(w, w.From, w.Spec.FromEnd, w.FromEnd)
			p.judgeEnd(w, w.To, w.Spec.ToEnd, w.ToEnd)
		}
	},
}

func (p *Pass) judgeEnd(w *circuit.Wire, at *circuit.Terminal, named, chosen *library.Terminal) {
	mm2 := w.Spec.Size.AreaMm2
	var what string
	var least, most float64
	switch {
	case named != nil && (mm2 < named.MinMm2*0.99 || mm2 > named.MaxMm2*1.01):
		what = fmt.Sprintf("%s does not fit its end: the barrel of %s takes %s to %s", w.Text(),
			named.Name, area(named.MinMm2), area(named.MaxMm2))
		least, most = named.MinMm2, named.MaxMm2
	case named == nil && chosen == nil && at.Kind != "":
		what = fmt.Sprintf("%s ends at %s in a %s; the library has none for %s",
			w.Text(), at.Text(), at.Kind, area(mm2))
	case outside(at.Part.Plug, mm2):
		f := at.Part.Plug.Family
		what = fmt.Sprintf("%s does not fit its plug: %s takes %s to %s", w.Text(), f.Name,
			area(f.MinMm2), area(f.MaxMm2))
		least, most = f.MinMm2, f.MaxMm2
	case named == nil && at.LeadMm2 > 0 && mm2 > at.LeadMm2*1.01:
		most = at.LeadMm2
		what = fmt.Sprintf("%s is spliced to the lead of %s, which is made for a %s, %s at most: no splice holds both", w.Text(),
			at.Part.Name, accessory(at.Part).Type.End, area(most))
	default:
		return
	}
	fin := ofWire(finding.Fault, w)
	fin.What = what
	fin.Numbers = []finding.Number{{Name: "area", Value: mm2, Unit: "mm²"}}
	switch {
	case mm2 < least:
		fin.Figure = figure.New(mm2, least, "mm²", figure.Smaller)
	case most > 0:
		fin.Figure = figure.New(mm2, most, "mm²", figure.Larger)
	}
	p.report(fin)
}

// outside tells whether a plug's family does not take wires of an area.
func outside(plug *circuit.Plug, mm2 float64) bool {
	return plug != nil && (mm2 < plug.Family.MinMm2*0.99 || mm2 > plug.Family.MaxMm2*1.01)
}
