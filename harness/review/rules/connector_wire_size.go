package rules

import (
	"fusewright/harness/design/figure"
	"fusewright/harness/review/finding"
)

var connectorWireSize = &Rule{
	Name:  "connector-wire-size",
	Title: "a wire's size is outside what a connector on its way takes",
	Says:  "does not fit the connector",
	Doc: "The conductor area of each wire that a connector in the loom parts: it must be in the range of the connector family, whose " +
		"seals and cavities take no other, and the library must hold a contact of the family for it.",
	Formula:  "least area ≤ conductor area ≤ largest area of the family",
	Limits:   "range of the connector family, and barrel ranges of its contacts in the library",
	Why:      "a barrel too large does not grip, a seal too wide lets water in, and a thick wire cut down to fit does not carry",
	Change:   "use a family for this size, as a second connector that `takes` the wire, or another size of wire",
	Severity: "fault",
	Mend:     MendPlug,
	Source:   "common practice, no source, unless the library row has one",
	Bad: hinged + `  hinge plug: {family: sealed 1.5, at: hinge}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 4 mm²}, returns to: frame}
`,
	Mended: []string{"wire: {size: 4 mm²}", "wire: {size: 1 mm²}"},
	Run: func(p *Pass) {
		for _, x := range p.c.Inlines() {
			family := x.Part.Plug.Family
			for _, pole := range x.Poles {
				w := pole.Wire
				mm2 := w.Spec.Size.AreaMm2
				if !outside(x.Part.Plug, mm2) && pole.Contact != nil {
					continue
				}
				fin := ofWire(finding.Fault, w)
				fin.Change = p.familyFor(x)
				fin.Numbers = []finding.Number{{Name: "area", Value: mm2, Unit: "mm²"}}
				fin.Figure = figure.New(mm2, family.MaxMm2, "mm²", figure.Larger)
				if mm2 < family.MinMm2 {
					fin.Figure = figure.New(mm2, family.MinMm2, "mm²", figure.Smaller)
				}
				p.say(fin, "%s does not fit %s: %s takes %s to %s", w.Text(), x.Part.Name, family.Name, area(family.MinMm2), area(family.MaxMm2))
			}
		}
	},
}
