package circuit

import (
	"math"
	"testing"

	"fusewright/library"
)

// TestContactOhmByHand: 100 mV at 10 A are 10 mΩ, 60 mV at 30 A of a block's way 2 mΩ.
func TestContactOhmByHand(t *testing.T) {
	for _, c := range []struct {
		kind   string
		ratedA float64
		want   float64
	}{{"fuse", 10, 0.010}, {"fuse", 20, 0.005}, {"switch", 10, 0.010}, {"block way", 30, 0.002}} {
		if got := contactOhm(library.Default(), c.kind, c.ratedA); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s of %g A: %g Ω, want %g Ω", c.kind, c.ratedA, got, c.want)
		}
	}
}
