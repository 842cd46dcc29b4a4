package rules

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var relayFeedsNothing = &Rule{
	Name:  "relay-feeds-nothing",
	Title: "a relay's contacts feed nothing",
	Says:  "its contacts feed nothing",
	Doc: "A relay of whose contacts none leads on to another part. Usually the part it was meant to " +
		"switch is fed from upstream of it, and so is never switched off.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "the relay clicks and everything looks right, but it switches nothing",
	Change:   "feed the parts that it should switch from its contact, or take the relay out",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
`,
	Good: `
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`,
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Relay) {
			turns := slices.ContainsFunc(part.Terminals, func(t *circuit.Terminal) bool { return len(t.Node.Turns()) > 0 })
			if turns || leadsOn(part) && !part.InReturn || part.InReturn && arrivedAt(part, circuit.ReturnWire) {
				continue
			}
			p.say(ofPart(finding.Fault, part), "the contacts of %s feed nothing", part.Name)
		}
	},
}

// leadsOn tells whether a wire starts at one of a part's terminals that is not
// the end of its coil: a coil's return starts there too.
func leadsOn(part *circuit.Part) bool {
	for _, t := range part.Terminals {
		for _, w := range wiresFrom(t) {
			if w.Role != circuit.CoilReturnWire {
				return true
			}
		}
	}
	return false
}
