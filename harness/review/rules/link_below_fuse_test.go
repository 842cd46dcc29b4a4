package rules

import (
	"fmt"
	"testing"

	"fusewright/harness/formula/battery"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/cranking"
)

// A link of 1 mm² may carry 18.5 A: the fuse behind the posts may be 15 A; of 20 A, up to 1.5 times it, is advice, of 30 A danger. A start
// by a starter that the charging names lasts as long as the link bears it, or is danger; by one that is assumed it is advice.
func TestLinkAtItsLimits(t *testing.T) {
	const snippet = `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 6 mΩ, in series: 2, link: {size: 1 mm², length: 100 mm}, at: battery tray}
fuses:
  lamp fuse: {type: blade C, rating: %d A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 6 mm²}, returns to: frame, return wire: {size: 6 mm²}, own switch: true}
taps: {}
`
	for rating, want := range map[int]finding.Severity{15: 0, 20: finding.Advice, 30: finding.Danger} {
		p := passOf(t, linkBelowFuse, fmt.Sprintf(snippet, rating))
		p.in.Cranking = nil
		says(t, fmt.Sprintf("fuse of %d A", rating), p.run(), want)
	}
	p := passOf(t, linkBelowFuse, fmt.Sprintf(snippet, 15))
	bearsS := p.laid.ToClassS(p.battery.Part.LinkWires()[0], 120)
	for share, want := range map[float64]finding.Severity{0.99: 0, 1: 0, 1.01: finding.Danger} {
		for _, assumed := range []bool{false, true} {
			if assumed && want != 0 {
				want = finding.Advice
			}
			p.in.Cranking = &cranking.Study{Start: battery.Start{Starter: "starter", Assumed: assumed, CurrentA: 120, Seconds: share * bearsS}, Cases: make([]cranking.Case, 1)}
			says(t, fmt.Sprintf("a start of %g times what it bears, assumed: %t", share, assumed), p.run(), want)
		}
	}
}
