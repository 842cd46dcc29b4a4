package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var relayContactOverload = &Rule{
	Name:  "relay-contact-overload",
	Title: "a relay contact switches more than its rating",
	Says:  "more current than the contact may switch",
	Doc: "What draws below each contact, by kind: filament lamps and motors have their own ratings, since " +
		"they start with many times their current. Shares of different kinds add up. The make rating " +
		"is reduced for the relay's ambient by its form's table. Of a load that is on for a time a contact " +
		"without a figure for its kind may carry what its form gives for so long, up to the mean heat of its rating. The " +
		"ratings hold at nominal; in the worst case the contact is to carry what flows.",
	Formula: "Σ current / rating for its kind ≤ 1",
	Limits:  "ratings of the relay form in the library, times the share at the ambient",
	Why:     "an overloaded contact welds shut, and what it feeds stays live",
	Change: "use a relay with a higher rating for this kind of load, or share the loads between " +
		"two",
	Severity: "danger; advice when only the rating for lamps or motors is exceeded, by no more than a third: a question of the contact's life, " +
		"and when only the worst case is more than the contact carries",
	Source: "makers' data sheets, mini and micro relays (one source)",
	Mend:   MendRelay,
	InUse:  true,
	Bad: `
fuses:
  heat fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  pump relay: {form: micro make, at: battery tray, fed by: heat fuse, wire: {size: 6 mm², length: 100 mm}, coil: {fed by: pilot, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  pump: {power: 220 W, behaves: motor, inrush: {peak: 1.5, time: 50 ms}, at: rear, fed by: pump relay, wire: {size: 6 mm²}, returns to: frame, return wire: {size: 6 mm²}}
charging: {regulated: 14.3 V, output: {1300 rpm: 32 A, 3000 rpm: 40 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`,
	Mended: []string{"form: micro", "form: mini", "power: 220 W", "power: 200 W"},
	Run: func(p *Pass) {
		for part, r := range each[*design.Relay](p.facts) {
			if r.Form == nil {
				continue
			}
			for _, b := range part.Branches {
				if b.Kind == circuit.ContactBranch && b.Closer != nil {
					p.judgeRelayContact(part, r.Form, b)
				}
			}
		}
	},
}

func (p *Pass) judgeRelayContact(part *circuit.Part, form *library.RelayForm, b *circuit.Branch) {
	ambient := part.AmbientC()
	v, u := p.heldContact(b, RelayContact(form, b, ambient), func(u loading) finding.Severity {
		carriesMore := over(u.A, form.MakeA*form.Share(ambient))
		return graver(carriesMore || over(u.share, lifeShare), finding.Advice, finding.Danger)
	})
	if v.severity == 0 {
		return
	}
	fin := ofPart(v.severity, part)
	v.decides(&fin, "use of rating", figure.Larger, 100, 1, "%")
	fin.Source = form.Source.String()
	p.say(fin, "contact %s %s", b.Name, u.does(v, " at "+celsius(ambient)))
}

// share100 is a share of a rating, with the digits that tell it from the whole.
func share100(s float64) string {
	if math.IsInf(s, 1) {
		return "any share"
	}
	return against(1, quantity.Share)(s)
}
