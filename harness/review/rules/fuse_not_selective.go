package rules

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/protection"
)

var fuseNotSelective = &Rule{
	Name:  "fuse-not-selective",
	Title: "a short opens the upstream fuse instead of its own",
	Says:  "a short opens the fuse upstream",
	Doc: "Every pair of devices in series, at the greatest and least current of every short that the lower " +
		"one has to clear. Reported when the upper must have opened while the lower may still be closed: " +
		"two kinds that do not go together. That the edges of two bands overlap is said by the protection " +
		"table alone, since blade fuses' bands are so wide that hardly any pair is free of it. Ratings that " +
		"are simply too close are fuse-grading.",
	Formula:  "latest opening of the lower < latest opening of the upper, at each short",
	Limits:   "the devices' time bands",
	Why:      "one fault takes every other branch with it, and the fuse that blew is not the one at the fault",
	Change:   "fit a faster type below or a slower one above",
	Severity: "advice",
	Source:   "selectivity by time bands: fuse application guidance (one source); latest against latest is our choice",
	Mend:     MendWire,
	Bad: `
fuses:
  main fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  lamp fuse: {type: breaker type I, rating: 5 A, at: battery tray, fed by: main fuse, wire: {size: 4 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 4 mm²}, returns to: frame, return wire: {size: 4 mm²}, stays live: "marks the parked machine", own switch: true}
`,
	Good: `
fuses:
  main fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: main fuse, wire: {size: 4 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 4 mm²}, returns to: frame, return wire: {size: 4 mm²}, stays live: "marks the parked machine", own switch: true}
`,
	Run: func(p *Pass) {
		if p.in.Protection == nil {
			return
		}
		for _, f := range p.in.Protection.Fuses {
			for i := range f.Above {
				if pair := &f.Above[i]; pair.Inverted != nil && !p.gradedWrong(f, pair) {
					p.reportInverted(f, pair)
				}
			}
		}
	},
}

// gradedWrong tells whether fuse-grading reports the pair.
func (p *Pass) gradedWrong(f *protection.Fuse, pair *protection.Pair) bool {
	return fuseRating(pair.Above) < p.practice.FuseRatio*fuseRating(f.Branch)
}

func (p *Pass) reportInverted(f *protection.Fuse, pair *protection.Pair) {
	fin := ofFuse(finding.Advice, f.Branch)
	fin.Cause = fusePlace(f.Branch)
	open, above := quantity.Against(pair.DownS, pair.UpS, quantity.Duration)
	atMost(&fin, "latest opening", pair.DownS, pair.UpS, "s")
	p.say(fin, "a short %s draws %s: %s may take %s to open, and %s upstream opens within %s",
		where(pair.Inverted), amps(pair.InvertedA), fuseText(f.Branch), open,
		fuseText(pair.Above), above)
}
