package rules

import (
	"fusewright/harness/review/finding"
)

var returnInFeedColour = &Rule{
	Name:  "return-in-feed-colour",
	Title: "a return has a colour of the feeds",
	Says:  "a return in a feed colour",
	Doc: "Returns that have not the colour that most returns of the design have, against the colours of the feeds: one " +
		"that any feed has too is reported. A design whose returns have no usual colour is not judged, nor loads of polarity-crossed. On boats " +
		"a return that is neither black nor yellow is marine-wire-colour.",
	Formula:  "none",
	Limits:   "none",
	Why:      "the next person at the loom takes it for a feed, puts a fuse or a lamp on it, or ties it to one",
	Change:   "use the colour of the other returns",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  plate lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  stop lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {colour: RD}}
`,
	Mended: []string{"colour: RD", "colour: BK"},
	Run: func(p *Pass) {
		usual := usualReturnColour(p.c.Wires)
		if usual == "" {
			return
		}
		feeds := map[string]bool{}
		for _, w := range p.c.Wires {
			if !isReturn(w) {
				feeds[w.Spec.Colour.Code()] = true
			}
		}
		for _, w := range p.c.Wires {
			code := w.Spec.Colour.Code()
			if code == "" || !isReturn(w) || code == usual || !feeds[code] || crossed(w.From.Part) != nil ||
				p.practice.Afloat && misleads(true, code) {
				continue
			}
			fin := ofWire(finding.Advice, w)
			fin.Cause = code
			p.say(fin, "return %s is %s, a colour of feeds; the other returns are %s", w.Text(), code, usual)
		}
	},
}
