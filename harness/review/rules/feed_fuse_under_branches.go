package rules

import (
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var feedFuseUnderBranches = &Rule{
	Name:  "feed-fuse-under-branches",
	Title: "a feed's fuse is smaller than what its branches draw together",
	Says:  "smaller than its branches draw",
	Doc: "What the accessories below a fuse draw when every one of them is on, whether or not a " +
		"situation says so; of those that the positions of a switch or a relay that changes over keep apart, the most that it lets be on at once. A fuse that a situation already overloads is fuse-under-load and is left " +
		"out here, as are factory fuses (tap-over-spare), fuses of a ring that bear it together, and fuses of a link between batteries or behind an isolator: " +
		"what the loads ask beyond it, the battery there gives.",
	Formula: "sum of the rated currents below the fuse that can flow at once ≤ rating",
	Limits:  "the fuse's rating",
	Why: "the first time everything is switched on together, the feed's fuse opens and takes " +
		"every branch with it",
	Change: "fit a larger fuse and wire for the feed, or write down under `accepted` why the " +
		"loads never run together",
	Severity: "advice",
	Source:   "common practice, no source",
	Mend:     MendFuse,
	Bad: `
fuses:
  feed fuse: {type: blade C, rating: 7.5 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
loads:
  left vest: {power: 50 W, behaves: resistor, at: rear, fed by: feed fuse, wire: {size: 1.5 mm²}, returns to: frame, own switch: true}
  right vest: {power: 50 W, behaves: resistor, at: rear, fed by: feed fuse, wire: {size: 1.5 mm²}, returns to: frame, own switch: true}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 15 A, spare: 10 A, supervised: no}
situations:
  one at a time: {key: on, engine: cruise, on: [left vest]}
  the other: {key: on, engine: cruise, on: [right vest]}
`,
	Mended: []string{
		"left vest: {power: 50 W", "left vest: {power: 40 W",
		"right vest: {power: 50 W", "right vest: {power: 40 W",
	},
	Run: func(p *Pass) {
		for _, b := range p.fuses() {
			if fuseRating(b) > 0 && p.underLoad(b).severity < finding.Fault && len(p.c.BatteriesBelow(b)) == 0 {
				p.judgeBranches(b)
			}
		}
	},
}

func (p *Pass) judgeBranches(b *circuit.Branch) {
	draws := p.drawsOf(b)
	if len(draws) < 2 {
		return
	}
	sum, atOnce := p.demandA(draws)
	if !over(sum, fuseRating(b)) || p.rings.In(b) && !over(sum, p.letThrough(b.B, nil).A) {
		return
	}
	fin := ofFuse(finding.Advice, b)
	atMost(&fin, "sum of branches", sum, fuseRating(b), "A")
	if len(atOnce) == 1 {
		p.say(fin, "%s feeds %s, which draws %s", fuseText(b), atOnce[0].Part.Name, amps(sum))
		return
	}
	p.say(fin, "%s feeds %s, which draw %s together",
		fuseText(b), wording.Few(names(atOnce), 4), amps(sum))
}
