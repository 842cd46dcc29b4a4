package rules

import (
	"fmt"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var connectorOverload = &Rule{
	Name:  "connector-overload",
	Title: "a wire through a connector carries more than its contact",
	Says:  "more current than the contact may carry",
	Doc: "The largest current of each wire that a connector in the loom parts, over all situations, at nominal values and in the worst " +
		"case, against the rating of its contact and that of the connector family, whichever is less, and less in a hot place, as at plugs. " +
		"No published derating for many loaded ways of these families was found: the maker's curve takes precedence.",
	Formula:  "current ≤ least of the ratings of contact and family × √((max C − ambient) / rise K), at most 1",
	Limits:   "ratings of the contact and of the connector family, `max C` and `rise K` of the family in the library",
	Why:      "the contacts heat, the spring goes soft and the housing melts around them",
	Change:   "use a family with larger contacts for this wire, as a second connector that `takes` it, or lead it past the place",
	Severity: "fault",
	Source:   "common practice, no source, unless the library row has one",
	InUse:    true,
	Mend:     MendPlug,
	Bad: hinged + `  hinge plug: {family: open 2.8, at: hinge}
fuses:
  heat fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  warm jacket: {power: 108 W, behaves: resistor, at: rear, fed by: heat fuse, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 32 A, spare: 20 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 22 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`,
	Mended: []string{" 2.8", " 6.3"},
	Run: func(p *Pass) {
		for _, x := range p.c.Inlines() {
			for _, pole := range x.Poles {
				p.judgePole(pole)
			}
		}
	},
}

func (p *Pass) judgePole(pole *circuit.Pole) {
	part, w := pole.Inline.Part, pole.Wire
	limitA, what, source := contactLimit(part.Plug.Family, pole.Contact)
	ratedA := limitA
	limitA *= part.Plug.Family.Share(part.AmbientC())
	v := p.held("contact rating", p.cornerAmps(w.Branch), figure.Larger, limitA, limitA, always(finding.Fault))
	if v.severity == 0 {
		return
	}
	fin := ofWire(v.severity, w)
	v.decides(&fin, "current", figure.Larger, 1, limitA, "A")
	fin.Source, fin.Change = source.String(), p.familyFor(pole.Inline)
	hot := ""
	if limitA < ratedA {
		hot = fmt.Sprintf(", and may carry %s at %s", amps(limitA), celsius(part.AmbientC()))
	}
	p.say(fin, "%s carries %s through %s; %s is rated %s%s", w.Text(), v.split(against(limitA, quantity.Current)), part.Name,
		what, rated(ratedA), hot)
}
