package rules

import (
	"fmt"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var plugOverload = &Rule{
	Name:  "plug-overload",
	Title: "a wire at a plug carries more than the plug's contact",
	Says:  "more current than the contact may carry",
	Doc: "The largest current of each wire at a plug over all situations, at nominal values and in the worst case, " +
		"against the rating of its contact and that of the connector family, whichever is less, and less in a hot place: contacts get " +
		"hotter with the square of the current. No published derating of these families was found, nor one for many loaded " +
		"ways in one housing: the maker's curve takes precedence.",
	Formula:  "current ≤ least of the ratings of contact and family × √((max C − ambient) / rise K), at most 1",
	Limits:   "ratings of the contact and of the connector family, `max C` and `rise K` of the family in the library",
	Why:      "the contact heats, its spring goes soft and the housing melts around it",
	Change:   "use a family with larger contacts, or share the load between two accessories",
	Severity: "fault",
	Source:   "common practice, no source, unless the library row has one",
	Mend:     MendPlug,
	InUse:    true,
	Bad: `
fuses:
  heat fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  warm jacket: {power: 108 W, behaves: resistor, plug: open 2.8, at: rear, fed by: heat fuse, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 32 A, spare: 20 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 22 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`,
	Mended: []string{" 2.8", " 6.3"},
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			p.judgePlugEnd(w, w.From, w.FromEnd)
			p.judgePlugEnd(w, w.To, w.ToEnd)
		}
	},
}

func (p *Pass) judgePlugEnd(w *circuit.Wire, at *circuit.Terminal, contact *library.Terminal) {
	plug := at.Part.Plug
	if plug == nil {
		return
	}
	limitA, what, source := contactLimit(plug.Family, contact)
	ratedA := limitA
	limitA *= plug.Family.Share(at.Part.AmbientC())
	v := p.held("contact rating", p.cornerAmps(w.Branch), figure.Larger, limitA, limitA, always(finding.Fault))
	if v.severity == 0 {
		return
	}
	fin := ofWire(v.severity, w)
	v.decides(&fin, "current", figure.Larger, 1, limitA, "A")
	fin.Source = source.String()
	hot := ""
	if limitA < ratedA {
		hot = fmt.Sprintf(", and may carry %s at %s", amps(limitA), celsius(at.Part.AmbientC()))
	}
	p.say(fin, "%s carries %s through the plug of %s; %s is rated %s%s",
		w.Text(), v.split(against(limitA, quantity.Current)), at.Part.Name, what, rated(ratedA), hot)
}

// contactLimit is what a contact of a family may carry in mild air, and what says so.
func contactLimit(family *library.Connector, contact *library.Terminal) (limitA float64, what string, source library.Source) {
	if contact != nil && contact.MaxA > 0 && contact.MaxA < family.MaxA {
		return contact.MaxA, "the contact " + contact.Name, contact.Source
	}
	return family.MaxA, family.Name, family.Source
}
