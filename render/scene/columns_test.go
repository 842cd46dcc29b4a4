package scene

import (
	"math"
	"testing"
)

// TestColumnWidths has tables worked by hand.
func TestColumnWidths(t *testing.T) {
	for _, c := range []struct {
		name  string
		cells [][]float64
		least []float64
		width float64
		want  []float64
	}{
		{"all fit: the rest is dealt out", [][]float64{{10, 20}}, []float64{10, 20}, 40, []float64{15, 25}},
		{"nothing to share", [][]float64{{10, 20}}, []float64{10, 20}, 30, []float64{10, 20}},
		// Three rows of 26 in the first column and one of 60 in the second: with 20 to
		// give, the first takes 6 and spares three rows a line; the second needs 48 to
		// spare its only row the second line, and gets none.
		{"many rows before one", [][]float64{{26, 5}, {26, 5}, {26, 5}, {5, 60}}, []float64{20, 40}, 66, []float64{26, 40}},
		{"too much is given as it is", [][]float64{{50, 50}}, []float64{40, 40}, 60, []float64{40, 40}},
	} {
		got := ColumnWidths(c.cells, c.least, c.width)
		for i := range c.want {
			if math.Abs(got[i]-c.want[i]) > 1e-9 {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
				break
			}
		}
	}
}
