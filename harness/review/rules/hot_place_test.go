package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// hotDesign leads a 1 mm² wire of class 85 °C (75 °C with the margin) past a place
// of a temperature: 12.5 A behind 20 A.
func hotDesign(ambientC float64) string {
	return example.Design(fmt.Sprintf(`
wire: {insulation: ISO 6722 thin wall class A, size: 1 mm²}
runs:
  - {from: battery tray, to: rear, length: 600 mm, near: {what: cylinder head, ambient: %g °C}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 30 A, spare: 25 A, supervised: no}
fuses:
  lamp fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: keyed feed, wire: {size: 4 mm², length: 100 mm}}
loads:
  tail lamp: {power: 150 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 4 mm²}}
`, ambientC))
}

// TestHotPlaceIsNeverMilder: at, below and above class less margin, and at and
// above the class, the wire carries more than it may, or its fuse lets more through
// than it may carry; from the limit on the place itself is said too.
func TestHotPlaceIsNeverMilder(t *testing.T) {
	for _, c := range []struct {
		ambientC   float64
		insulation finding.Severity // 0 = none
	}{
		{20, 0}, {60, 0}, {64.9, 0}, {65, 0}, {65.1, 0}, {74.9, 0}, {74.999999, 0}, {75, finding.Fault}, {75.1, finding.Fault},
		{84.9, finding.Fault}, {85, finding.Danger}, {85.1, finding.Danger}, {120, finding.Danger},
	} {
		for _, idle := range []bool{false, true} {
			got := hotFindings(t, c.ambientC, idle)
			if !idle && c.ambientC > 40 && got["wire-over-current"] != finding.Danger {
				t.Errorf("%g °C: wire-over-current is %v", c.ambientC, got["wire-over-current"])
			}
			// Where 20 A are less than one and a half times what it may carry, the curve says it.
			fuse := max(got["fuse-over-wire"], got["overload-hurts-wire"], got["fuse-wire-curve"])
			if (idle || c.ambientC < 75) && fuse != finding.Danger {
				t.Errorf("%g °C, idle %v: the fuse is %v", c.ambientC, idle, fuse)
			}
			if got["insulation-class"] != c.insulation {
				t.Errorf("%g °C: insulation-class is %v, want %v", c.ambientC, got["insulation-class"], c.insulation)
			}
		}
	}
}

// hotFindings is the worst severity by rule at the lamp, which may be on in no
// situation.
func hotFindings(t *testing.T, ambientC float64, idle bool) map[string]finding.Severity {
	src := hotDesign(ambientC)
	if idle {
		src = strings.Replace(src, "behaves: resistor", "own switch: true, behaves: resistor", 1) + "situations:\n  ride: {key: on, engine: cruise, on: none}\n"
	}
	got := map[string]finding.Severity{}
	for _, f := range open(assess(t, "hot.yaml", []byte(src))) {
		if f.Part == "tail lamp" {
			got[f.Rule] = max(got[f.Rule], f.Severity)
		}
	}
	return got
}
