package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

var relayTooHot = &Rule{
	Name:     "relay-too-hot",
	Title:    "a relay is in a place hotter than its rating",
	Says:     "too hot a place",
	Doc:      "The ambient of the relay's place against the highest ambient of its form.",
	Formula:  "ambient ≤ highest ambient of the form",
	Limits:   "the relay form in the library",
	Why:      "the coil no longer pulls in when hot, and its plastic softens",
	Change:   "move the relay to a cooler place",
	Severity: "fault",
	Source:   "makers' data sheets, mini and micro relays (one source)",
	Mend:     MendRelay,
	Bad: `
places:
  battery tray: {ambient: 40 °C}
  rear: {ambient: 35 °C}
  engine: {ambient: 130 °C}
runs:
  - {from: battery tray, to: rear, length: 600 mm}
  - {from: battery tray, to: engine, length: 600 mm, cover: heat sleeve}
wire: {insulation: ISO 6722 thin wall class D, size: 1 mm²}
relays:
  lamp relay: {form: mini make, at: engine, fed by: lamp fuse, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, returns to: frame}
`,
	Good: `
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`,
	Run: func(p *Pass) {
		for part, r := range each[*design.Relay](p.facts) {
			if r.Form == nil || r.Form.MaxC <= 0 || part.Place == nil {
				continue
			}
			if t := part.AmbientC(); t > r.Form.MaxC {
				fin := ofPart(finding.Fault, part)
				value, most := quantity.Against(t, r.Form.MaxC, quantity.Temperature)
				atMost(&fin, "ambient", t, r.Form.MaxC, "°C")
				fin.Source = r.Form.Source.String()
				p.say(fin, "%s is at %s, %s; a %s is rated to %s",
					part.Name, part.Place.Name,
					value, r.Form.Name, most)
			}
		}
	},
}
