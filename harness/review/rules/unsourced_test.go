package rules_test

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/proof/example"
)

// TestUnsourcedDrop is a loop worked by hand, in mΩ: a work lamp at the end of 100 mm and
// 2 m of 1 mm² (18.5 mΩ/m at most from memory, of which copper's own are 17.241), back by
// 2 m, at nominal as warm as in package corner's test by hand:
//
//	wires     1.85·1.0901 + 1.10 =  3.117, of 2.95 unsourced 1.10 + 0.1259
//	         37·1.0955 + 1.01    = 41.544, of 38.01 unsourced 1.01 + 2.518
//	         37·1.0955 + 0.51    = 41.044, of 37.51 unsourced 0.51 + 2.518
//	together 85.705, of which 1.295 + 3.856 + 3.313 = 8.464 have no source: 9.88 %
//
// The wires lose 4.1141 A · 85.705 mΩ = 0.3526 V, 2.938 % of 12 V; 0.290 % rest on
// values without a source.
func TestUnsourcedDrop(t *testing.T) {
	for _, c := range []struct {
		limit    float64 // %
		noMargin bool
	}{
		{2.60, false}, // 0.338 % beyond
		{2.63, false}, // 0.308 %
		{2.65, true},  // 0.288 %
		{2.90, true},
	} {
		found := false
		for _, f := range assess(t, "unsourced.yaml", []byte(example.Design(fmt.Sprintf(`
limits: {drop other: %g %%}
fuses:
  lamp fuse: {type: blade C, rating: 7.5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
loads:
  work lamp: {power: 48 W, rated at: 12 V, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm², length: 2 m}, returns to: frame, return wire: {size: 1 mm², length: 2 m}}
situations:
  at rest: {key: on, engine: stopped, on: [work lamp]}
`, c.limit)))) {
			if f.Rule != "voltage-drop" {
				continue
			}
			found = true
			if u := f.Unsourced; math.Abs(u.Share()-0.0988) > 5e-4 || math.Abs(u.Of-0.3526) > 5e-4 || u.NoMargin() != c.noMargin {
				t.Errorf("limit %g %%: %.4f of %.4f V, margin %.4f V, no margin %t", c.limit, u.Share(), u.Of, u.Margin, u.NoMargin())
			}
		}
		if !found {
			t.Errorf("limit %g %%: no finding", c.limit)
		}
	}
}
