package rules

import (
	"slices"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseInReturn = &Rule{
	Name:  "fuse-in-return",
	Title: "a fuse is in the return",
	Says:  "in the return",
	Doc: "Each fuse or breaker between a load, or a coil, and the ground. It counts as no protection of the feed: of one " +
		"whose feed has no fuse either, unfused-conductor is the danger. Behind a fuse in the feed as well, as some radios " +
		"have it against a lost engine strap, it is advice.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "a feed that chafes on the frame bypasses it; once it is open the load is dead and everything up to it " +
		"still live, and the current finds another way back: a bracket, a screen, a control cable",
	Change:   "move the fuse to the feed, at its source end, and run the return straight to ground",
	Severity: "fault; advice where the feeds have fuses of their own",
	Source: "33 CFR 183.455(a) and 46 CFR 111.50-5(a): a device in each ungrounded conductor, " +
		"where it receives its supply (two sources)",
	Bad: `
fuses:
  radio fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  back fuse: {type: blade C, rating: 5 A, at: battery tray, returns to: frame, return wire: {size: 1 mm², length: 100 mm}}
loads:
  radio: {power: 12 W, behaves: constant power, at: rear, fed by: radio fuse, wire: {size: 1 mm²}, returns to: back fuse, return wire: {size: 1 mm²}}
`,
	Mended: []string{
		"  back fuse: {type: blade C, rating: 5 A, at: battery tray, returns to: frame, return wire: {size: 1 mm², length: 100 mm}}\n", "",
		"returns to: back fuse", "returns to: frame",
	},
	Run: func(p *Pass) {
		for _, b := range p.fuses() {
			if b.Returns() {
				p.judgeInReturn(b)
			}
		}
	},
}

func (p *Pass) judgeInReturn(b *circuit.Branch) {
	draws := p.drawsOf(b)
	if len(draws) == 0 {
		return // part-unused
	}
	bare := slices.DeleteFunc(slices.Clone(draws), func(x *circuit.Branch) bool {
		_, open := p.nearest.Above(x.A)
		return !open
	})
	if len(bare) > 0 {
		p.say(ofFuse(finding.Fault, b), "%s is in the return of %s, whose feed has no fuse", fuseText(b), wording.Few(names(bare), 4))
		return
	}
	p.say(ofFuse(finding.Advice, b), "%s is in the return of %s: when it opens, everything upstream of it is off but still live",
		fuseText(b), wording.Few(names(draws), 4))
}
