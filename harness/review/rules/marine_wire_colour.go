package rules

import (
	"fmt"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var marineWireColour = &Rule{
	Name:  "marine-wire-colour",
	Title: "a wire's colour misleads on a boat",
	Says:  "misleading colour",
	Doc: "Boats only: returns must be black, alone or with a tracer, or yellow, and no feed may be black, green or green-yellow. " +
		"Vehicles have no colour code for added accessories that could be cited, so nothing is said " +
		"there. One finding per wire, those of a colour and role printed together.",
	Formula: "none",
	Limits:  "the practice is afloat, such as marine",
	Why: "the next person at the loom takes a black wire for a negative and a green one for " +
		"bonding",
	Change:   "use black or yellow for returns and red or the circuit's own colour for feeds",
	Severity: "advice",
	Source:   "ABYC E-11, colour tables (from memory)",
	Bad: `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: battery negative, return wire: {size: 1.5 mm², colour: BU}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
`,
	Mended: []string{"colour: BU", "colour: YE"},
	Run: func(p *Pass) {
		if !p.practice.Afloat {
			return
		}
		for _, w := range p.c.Wires {
			if back := isReturn(w); misleads(back, w.Spec.Colour.Code()) {
				p.reportColour(w, back)
			}
		}
	},
}

// misleads tells whether a colour means something else on a boat. A wire
// without a colour is not judged.
func misleads(back bool, code string) bool {
	if code == "" {
		return false
	}
	if back {
		return code != "YE" && !strings.HasPrefix(code, "BK")
	}
	return code == "BK" || code == "GN" || code == "GNYE"
}

func (p *Pass) reportColour(w *circuit.Wire, back bool) {
	f := ofWire(finding.Advice, w)
	f.Cause = fmt.Sprint(back) + " " + w.Spec.Colour.Code()
	if back {
		f.What = fmt.Sprintf("return %s is %s; black or yellow means negative on a boat",
			w.Text(), w.Spec.Colour.Code())
	} else {
		f.What = fmt.Sprintf("feed %s is %s, which means negative or bonding on a boat",
			w.Text(), w.Spec.Colour.Code())
	}
	p.report(f)
}
