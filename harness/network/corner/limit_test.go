package corner_test

import (
	"math"
	"testing"

	"fusewright/harness/network/corner"
)

// Rounding is no difference; anything that a person could read is.
func TestBeyond(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		want bool
	}{
		{1, 1, false}, {1 + 1e-12, 1, false}, {1, 1 + 1e-12, false}, {1.001, 1, true}, {1, 1.001, false},
		{1e-6, 0, true}, {0, 0, false}, {0, -1e-6, true}, {-1, -1.001, true}, {-1, -1 - 1e-12, false},
		{math.Inf(1), 1, true}, {1, math.Inf(-1), true}, {math.Inf(1), math.Inf(1), false}, {math.NaN(), 1, false},
	} {
		if got := corner.Beyond(c.a, c.b); got != c.want {
			t.Errorf("Beyond(%v, %v) = %v", c.a, c.b, got)
		}
	}
}
