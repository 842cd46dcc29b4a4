package purchase

import "testing"

// Cores of one part lie in one cable: the longest and the next in the first, and so on.
func TestCablesByHand(t *testing.T) {
	for _, c := range []struct {
		cores []float64
		in    int
		want  float64
	}{{nil, 2, 0}, {[]float64{2}, 2, 2}, {[]float64{2, 2.5}, 2, 2.5}, {[]float64{2.5, 1, 2}, 2, 3.5}, {[]float64{1, 2, 3, 4}, 2, 6},
		{[]float64{1, 2, 3, 4}, 4, 4}} {
		if got := cablesM(c.cores, c.in); got != c.want {
			t.Errorf("%v in %d: %g m, want %g m", c.cores, c.in, got, c.want)
		}
	}
}
