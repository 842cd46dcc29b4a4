package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var polarityCrossed = &Rule{
	Name:  "polarity-crossed",
	Title: "the colours of a load's feed and return are swapped",
	Says:  "colours of feed and return swapped",
	Doc: "A load whose feed is black and whose return is red, alone or as base colour: the two were exchanged on " +
		"the drawing or will be on the bench. Other colours have no polarity that all agree on.",
	Formula: "none",
	Limits:  "none",
	Why: "the installer connects red to the feed as everywhere else; a polarised load stays dark or is " +
		"destroyed, and a metal case becomes live",
	Change:   "give the feed the circuit's colour or red, and the return black",
	Severity: "advice; fault when the load is `polarised`",
	Source:   "ABYC E-11, colour tables: red positive, black or yellow negative (from memory); common practice on vehicles",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, polarised: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm², colour: BK}, returns to: frame, return wire: {size: 1 mm², colour: RD}}
`,
	Mended: []string{"colour: BK", "colour: RD", "colour: RD", "colour: BK"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			if feed := crossed(part); feed != nil {
				p.say(ofPart(graver(accessory(part).Polarised, finding.Advice, finding.Fault), part), "the feed of %s is %s and its return red: the colours are swapped",
					part.Name, feed.Spec.Colour.Code())
			}
		}
	},
}

// crossed is the feed of a load whose two wires have each other's colour; nil
// when they have not.
func crossed(part *circuit.Part) *circuit.Wire {
	plus, minus := part.Terminal("+"), part.Terminal("-")
	if accessory(part) == nil || plus == nil || minus == nil {
		return nil
	}
	for _, back := range wiresFrom(minus) {
		if !hasBase(back, "RD") {
			continue
		}
		for _, feed := range wiresTo(plus) {
			if hasBase(feed, "BK") {
				return feed
			}
		}
	}
	return nil
}

// hasBase tells whether a wire's colour, or the base of two, is the one given.
func hasBase(w *circuit.Wire, code string) bool {
	c := w.Spec.Colour.Code()
	return len(c) >= 2 && c[:2] == code
}
