package rules_test

import (
	"fmt"
	"testing"

	"fusewright/harness/proof/example"
)

// TestFuseLikelyAges: a blade fuse of 5 A may carry 4.6 A at 40 °C. A motor takes 20 % more
// in the likely and in the worst case; a load of constant power likely 10 % and more by its
// low volts. What only the worst case passes is left as it is; what is likely to, sizing
// mends, but for a motor's pull.
func TestFuseLikelyAges(t *testing.T) {
	for _, c := range []struct {
		name, load  string
		found, mend bool
	}{
		{"motor, at worst within", "current: 3.8 A, behaves: motor, on for: 6 min, every: 60 min", false, false},
		{"motor, likely past", "current: 4 A, behaves: motor, on for: 6 min, every: 60 min", true, true},
		{"motor, for moments", "current: 4 A, behaves: motor, on for: 5 min, every: 60 min", true, false},
		{"at worst within", "power: 53 W, behaves: constant power, on for: 1 min, every: 10 min", false, false},
		{"at worst past", "power: 58 W, behaves: constant power, on for: 1 min, every: 10 min", true, false},
		{"the highest it takes", "power: 65 W, figure: highest, behaves: constant power, on for: 1 min, every: 10 min", true, false},
		{"likely past", "power: 60 W, behaves: constant power, on for: 1 min, every: 10 min", true, true},
	} {
		src := example.Design(fmt.Sprintf(`
fuses:
  one fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
loads:
  one: {%s, at: battery tray, own switch: yes, fed by: one fuse, wire: {size: 1.5 mm², length: 300 mm}, returns to: battery negative, return wire: {size: 1.5 mm², length: 300 mm}}
situations:
  on: {engine: cruise, on: [one]}
`, c.load))
		found, mend := false, false
		for _, f := range assess(t, "one", []byte(src)) {
			if f.Rule == "fuse-under-load" {
				found, mend = true, !f.Leave
			}
		}
		if found != c.found || mend != c.mend {
			t.Errorf("%s: found %t, to be mended %t, want %t and %t", c.name, found, mend, c.found, c.mend)
		}
	}
}
