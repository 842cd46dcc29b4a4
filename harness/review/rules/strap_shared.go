package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var strapShared = &Rule{
	Name:  "strap-shared",
	Title: "several returns of a moving part share one strap",
	Says:  "the one strap of several returns",
	Doc: "A frame stud at a place that moves against the frame (`moves: yes`), such as a fork or an engine on rubber " +
		"mounts, to which several parts return and from which a single wire leads on: its current in the situation where " +
		"that is most. The starter is not in the design: a strap that carries it too must be judged by hand.",
	Formula: "current of the strap ≤ 5 A, where more than one part returns through it",
	Limits:  "5 A (our choice): 2.5 W a metre in a steel control cable of 2 mm, about 0.1 Ω/m (from memory)",
	Why: "once the strap breaks or corrodes, the current of all of them goes back through the bearing or a control cable, " +
		"which heats, sticks or wears, and nobody looks at the strap",
	Change:   "give the part a second strap to another point, or run the returns to the battery by wires of their own",
	Severity: "advice always",
	Source:   "common practice, no source",
	Bad: `
places:
  battery tray: {ambient: 40 °C}
  rear: {ambient: 35 °C, moves: yes}
runs:
  - {from: battery tray, to: rear, length: 600 mm, cover: braided sleeve}
grounds:
  flap bolt: {kind: frame stud, at: rear, limit: 20 A, returns to: battery negative, wire: {size: 4 mm²}}
fuses:
  heat fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 20 A, spare: 15 A, supervised: no}
loads:
  warm seat: {power: 30 W, behaves: resistor, at: rear, fed by: heat fuse, wire: {size: 1.5 mm²}, returns to: flap bolt, return wire: {size: 1.5 mm², length: 100 mm}}
  warm back: {power: 30 W, behaves: resistor, at: rear, fed by: heat fuse, wire: {size: 1.5 mm²}, returns to: flap bolt, return wire: {size: 1.5 mm², length: 100 mm}}
`,
	Mended: []string{
		"returns to: battery negative", "returns to: [battery negative, tray bolt]",
		"grounds:\n", "grounds:\n  tray bolt: {kind: frame stud, at: battery tray, limit: 20 A, frame resistance: 5 mΩ}\n",
	},
	Run: func(p *Pass) {
		for part, g := range each[*design.Ground](p.facts) {
			if g.Kind == design.FrameStud && part.Place != nil && part.Place.Moves && len(g.Returns) == 1 {
				p.judgeStrap(part)
			}
		}
	},
}

// cableA is what a control cable bears without getting hot.
const cableA = 5.0

func (p *Pass) judgeStrap(stud *circuit.Part) {
	var strap *circuit.Wire
	for _, t := range stud.Terminals {
		for _, w := range wiresFrom(t) {
			strap = w
		}
	}
	from := p.returnsTo(stud)
	if strap == nil || len(from) < 2 {
		return
	}
	c := p.cornerAmps(strap.Branch)(corner.AtNominal)
	if a := math.Abs(c.Nominal); c.in != nil && over(a, cableA) {
		fin := ofWire(finding.Advice, strap)
		fin.Situation, fin.Leave = c.in.Name, true
		atMost(&fin, "current of the strap", a, cableA, "A")
		p.say(fin, "%s is the only strap of %s, which moves: %s return %s through it", strap.Text(), stud.Place.Name,
			wording.Few(from, 4), amps(a))
	}
}
