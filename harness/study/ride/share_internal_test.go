package ride

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// A windlass of 3 min at a time and 1 % of the day draws for a leg of 2 min whole, for a
// third of one of 9 min, and its share of a long one.
func TestShareOfALeg(t *testing.T) {
	b := &circuit.Branch{Load: &circuit.LoadSpec{Duty: 0.01, Load: &design.Load{OnForS: design.Quantity{Value: 180, Text: "3 min"}}}}
	for legS, want := range map[float64]float64{120: 1, 180: 1, 540: 1.0 / 3, 18000: 0.01, 36000: 0.01} {
		if got := (&demand{legS: legS}).share(b); got != want {
			t.Errorf("%g s: %g, want %g", legS, got, want)
		}
	}
}
