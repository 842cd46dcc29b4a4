package rules_test

import (
	"testing"

	"fusewright/harness/review/finding"
)

// Wires side by side are held against their fuse with a share each. One of 1.5 mm² of four
// may carry 14.7 A here by heat balance and 16.0 A by table: a fuse of 30 A asks 15 A of each of
// two, which one of the two proves, and one of 35 A asks 17.5 A, which neither does and is within
// 1.5 times. A lone one carries 18.9 A, and 35 A are more than 1.5 times that. By the curves two
// are damaged behind 40 A before it must open, and three within minutes alone.
func TestWiresSideBySideShareTheirFuse(t *testing.T) {
	const shared = `
fuses:
  winch fuse: {type: blade C, rating: RATING, at: battery tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}}
loads:
  winch: {current: 10 A, behaves: resistor, at: rear, fed by: winch fuse, wire: {size: 1.5 mm²SHARED}, returns to: frame, return wire: {size: 1.5 mm²SHARED}, stays live: "a test", own switch: true}
`
	for _, c := range []struct {
		rating, shared string
		want, curve    finding.Severity
	}{
		{"35 A", "", finding.Danger, 0},
		{"30 A", ", parallel: 2", 0, 0},
		{"35 A", ", parallel: 2", finding.Advice, 0},
		{"35 A", ", parallel: 3", 0, 0},
		{"40 A", ", parallel: 2", 0, finding.Danger},
		{"40 A", ", parallel: 3", 0, finding.Advice},
	} {
		for rule, want := range map[string]finding.Severity{"fuse-over-wire": c.want, "return-below-fuse": c.want, "fuse-wire-curve": c.curve} {
			if got := gravest(t, replace(shared, "RATING", c.rating, "SHARED", c.shared), rule); got != want {
				t.Errorf("%s%s: %s is %s, want %s", c.rating, c.shared, rule, got, want)
			}
		}
	}
}
