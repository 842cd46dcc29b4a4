package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/finding"
)

// With the rear block's return lost the tail lamp's current could reach the right flood, which is off, through the left one
// backwards alone: a resistor passes it, LEDs and electronics may, what is polarised does not.
func TestSneakThroughWhatPassesIt(t *testing.T) {
	for left, want := range map[string]finding.Severity{
		"behaves: resistor":                                    finding.Fault,
		"behaves: resistor, symbol: LED":                       finding.Advice,
		"behaves: constant power, symbol: LED":                 finding.Advice,
		"behaves: constant power, symbol: LED, polarised: yes": 0,
		"behaves: resistor, polarised: yes":                    0,
	} {
		r := reviewtest.Of(t, example.Design(`
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 2 mΩ}
  rear block: {kind: ground block, at: rear, limit: 30 A, returns to: battery negative, wire: {size: 1.5 mm²}}
switches:
  flood switch: {rating: 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  left flood: {power: 10 W, `+left+`, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  right flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: frame}
situations:
  riding: {engine: cruise, on: [tail lamp]}
`))
		var got finding.Severity
		for _, f := range r.Findings {
			if f.Rule == "sneak-path" && strings.Contains(f.What, "right flood") {
				if got = f.Severity; !strings.Contains(f.What, "left flood") {
					t.Errorf("%s: no path in %q", left, f.What)
				}
			}
		}
		if got != want {
			t.Errorf("%s: %v, want %v", left, got, want)
		}
	}
}
