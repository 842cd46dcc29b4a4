package rules

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// A strip SF51 of 125 A carries it for good; at 1.35 times that it opens within 120 to
// 1800 s, in the middle 465 s, at twice that within 1 to 15 s, in the middle 3.87 s. In the
// tray's 40 °C the soonest count from 125 A · 0.9333/0.99 = 117.8 A. τ = 465 s/ln(1.8225/0.8225) =
// 584 s: 5 min every 6 are 0.874 of the heat for good. The practice's 0.8 of what is on for
// good is 0.8/√(5/6) = 0.876 here, 109.5 A, so 117.1 A while on. 193.8 A
// open the usual in a minute: √(11 s · 329 s). Of 240 A, 4.87 s in the middle and heat that fades by
// 0.759 in that time, 2 s every 10 s come to 0.444, 0.697, 0.840, 0.921, 0.967, 0.993 and 1.
func TestFuseInCycles(t *testing.T) {
	for _, c := range []struct {
		name string
		amps float64
		time string
		want finding.Severity
		text string
	}{
		{"for good, below", 99, "", none, ""},
		{"for good, above", 101, "", finding.Fault, " continuously"},
		{"how often is not said", 117, ", on for: 1 min", finding.Fault, " may carry 117 A continuously"},
		{"above its rating, a minute", 150, ", on for: 1 min, every: 10 min", none, ""},
		{"a minute, below", 193, ", on for: 1 min, every: 10 min", finding.Advice, "the fastest one opens in the 1st cycle, after "},
		{"a minute, above", 195, ", on for: 1 min, every: 10 min", finding.Fault, "; a typical one opens in the 1st cycle, after "},
		{"5 min every 6, below", 116, ", on for: 5 min, every: 6 min", finding.Advice, "; it heats like 108 A continuously"},
		{"5 min every 6, above", 118, ", on for: 5 min, every: 6 min", finding.Fault, "; it heats like 110 A continuously"},
		{"twice, for 2 s", 240, ", on for: 2 s, every: 10 min", finding.Advice, "the fastest one opens in the 1st cycle"},
		{"twice, for 2 s every 10 s", 240, ", on for: 2 s, every: 10 s", finding.Fault, "a typical one opens in the 7th cycle, after 1.96 s"},
	} {
		p := passOf(t, fuseUnderLoad, fmt.Sprintf(`
fuses:
  winch fuse: {type: strip SF51, rating: 125 A, at: battery tray, fed by: battery, wire: {size: 95 mm², length: 100 mm}}
loads:
  winch: {current: 60 A, behaves: resistor, own switch: yes, at: battery tray, fed by: winch fuse, wire: {size: 95 mm², length: 100 mm}, returns to: battery negative, return wire: {size: 95 mm², length: 100 mm}%s}
situations:
  pulling: {key: on, engine: stopped, on: [winch]}
`, c.time))
		b := part(t, p, "winch fuse").Branches[0]
		for _, s := range p.in.Solutions {
			s.BranchA[b.Index] = c.amps
		}
		p.judgeUnderLoad(b)
		says(t, c.name, p.found, c.want)
		if c.want != none && len(p.found) > 0 && !strings.Contains(p.found[0].What, c.text) {
			t.Errorf("%s: %s", c.name, p.found[0].What)
		}
	}
}
