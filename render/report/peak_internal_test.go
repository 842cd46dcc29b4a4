package report

import "testing"

// A peak is said from 2 % above the average and 1 mA on.
func TestPeaks(t *testing.T) {
	for _, c := range []struct {
		peakA, meanA float64
		want         bool
	}{
		{10.19, 10, false}, {10.2, 10, false}, {10.21, 10, true}, {0.001, -1, false}, {0.0011, -1, true}, {-2, -1, false}, {3.3, 0, true},
	} {
		if got := peaks(c.peakA, c.meanA); got != c.want {
			t.Errorf("%g A at peak, %g A on average: %t", c.peakA, c.meanA, got)
		}
	}
}
