package cutting_test

import (
	"testing"

	"fusewright/harness/workshop/cutting"
)

// TestPullTest holds the choice of the row; 16 AWG and 14 AWG are those of the
// published table.
func TestPullTest(t *testing.T) {
	for _, c := range []struct {
		name          string
		areaMm2, want float64
	}{
		{"16 AWG", 1.31, 133.5},
		{"14 AWG", 2.08, 222.5},
		{"1.5 mm² lies between 16 and 14 AWG", 1.5, 133.5},
		{"thinner than the table", 0.1, 0},
		{"thicker than the table", 120, 1112.5},
	} {
		if got := cutting.PullTest(c.areaMm2); got != c.want {
			t.Errorf("%s: %g N, want %g", c.name, got, c.want)
		}
	}
}
