package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
)

var marineWireColour = &Rule{
	Name:  "marine-wire-colour",
	Title: "a wire's colour misleads on a boat",
	Doc: "Boats only: returns must be black or yellow, and no feed may be black, green or green-yellow. " +
		"Vehicles have no colour code for added accessories that could be cited, so nothing is said " +
		"there. One finding a colour and role, at the first such wire.",
	Formula: "none",
	Limits:  "the practice is marine",
	Why: "the next hand at the loom takes a black wire for a negative and a green one for " +
		"bonding",
	Change:   "use black or yellow for returns and red or the circuit's own colour for feeds",
	Severity: "advice",
	Source:   "ABYC E-11 Tables XIV and XV (two sources)",
	Bad: `
practice: marine
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: battery negative, return wire: {size: 1.5 mm², colour: BU}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
`,
	Good: `
practice: marine
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: battery negative, return wire: {size: 1.5 mm², colour: YE}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
`,
	Run: func(p *Pass) {
		if p.practice.Name != "marine" {
			return
		}
		type group struct {
			back   bool
			colour string
		}
		first := map[group]*circuit.Wire{}
		count := map[group]int{}
		var order []group
		for _, w := range p.c.Wires {
			g := group{isReturn(w), w.Spec.Colour.Code()}
			if !misleads(g.back, g.colour) {
				continue
			}
			if first[g] == nil {
				first[g], order = w, append(order, g)
			}
			count[g]++
		}
		for _, g := range order {
			p.reportColour(first[g], count[g], g.back)
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
		return code != "BK" && code != "YE"
	}
	return code == "BK" || code == "GN" || code == "GNYE"
}

func (p *Pass) reportColour(w *circuit.Wire, n int, back bool) {
	f := ofWire(finding.Advice, w)
	if back {
		f.What = fmt.Sprintf("return %s is %s; black or yellow means negative on a boat",
			wireText(w), w.Spec.Colour.Code())
	} else {
		f.What = fmt.Sprintf("feed %s is %s, which means negative or bonding on a boat",
			wireText(w), w.Spec.Colour.Code())
	}
	if n > 1 {
		f.What += fmt.Sprintf(" (and %s)", plural(n-1, "more like it", "more like it"))
	}
	p.report(f)
}
