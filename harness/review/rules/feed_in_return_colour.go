package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var feedInReturnColour = &Rule{
	Name:  "feed-in-return-colour",
	Title: "a feed has the colour of the returns",
	Says:  "a feed in a return colour",
	Doc: "The colour that most returns of the design have, when at least two have it, against the colour of every " +
		"feed. Loads of polarity-crossed are left out. On boats a black or green feed, and a return that is neither black nor yellow, is " +
		"marine-wire-colour and not reported here. One finding per wire, printed together.",
	Formula: "none",
	Limits:  "none",
	Why: "the next person at the loom takes it for a return, bolts it to the frame, and the battery is " +
		"shorted through the fuse, or a live end is left bare",
	Change:   "use a colour that no return has",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  stop lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm², colour: BK}, returns to: frame}
`,
	Mended: []string{"colour: BK", "colour: BKRD"},
	Run: func(p *Pass) {
		usual := usualReturnColour(p.c.Wires)
		afloat := p.practice.Afloat
		if usual == "" || (afloat && misleads(true, usual)) {
			return
		}
		for _, w := range p.c.Wires {
			code := w.Spec.Colour.Code()
			if isReturn(w) || w.Role == circuit.LinkWire || code != usual || crossed(w.To.Part) != nil || (afloat && misleads(false, code)) {
				continue
			}
			fin := ofWire(finding.Advice, w)
			fin.Cause = usual
			p.say(fin, "feed %s is %s, the colour of the returns", w.Text(), usual)
		}
	},
}

// usualReturnColour is the colour that most returns have, of several the first by
// its code; "" when no two returns share one.
func usualReturnColour(wires []*circuit.Wire) string {
	count := map[string]int{}
	best := ""
	for _, w := range wires {
		code := w.Spec.Colour.Code()
		if code == "" || !isReturn(w) || crossed(w.From.Part) != nil {
			continue
		}
		count[code]++
	}
	for code, n := range count {
		if n >= 2 && (n > count[best] || n == count[best] && code < best) {
			best = code
		}
	}
	return best
}
