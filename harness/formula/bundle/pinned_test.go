package bundle

import (
	"math"
	"testing"
)

// The geometry and the resistance inside, worked by hand.
func TestCoreByHand(t *testing.T) {
	for _, c := range []struct {
		name    string
		outer   []float64 // mm
		outerMm float64
		inner   float64 // (1 − 1/m)/(4π · 0.13)
	}{
		{"one", []float64{3}, 3, 0},
		{"two", []float64{3, 3}, 4.89898, 0.306067},                            // 3·√(2/0.75)
		{"three", []float64{3, 3, 3}, 6, 0.408090},                             // 3·√4
		{"twelve", []float64{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2}, 8, 0.561123}, // 2·√16
		{"thick and thin", []float64{4, 2}, 4.632993, 0.122427},                // m = 1.25: 4·(1 + 0.25·0.632993)
	} {
		var core core
		for _, d := range c.outer {
			core.add(strand{lossW20: 1, outerMm: d}, 1)
		}
		if math.Abs(core.outerMm()-c.outerMm) > 1e-5 || math.Abs(core.innerKmPerW()-c.inner) > 1e-5 {
			t.Errorf("%s: %g mm, %g K·m/W; want %g, %g", c.name, core.outerMm(), core.innerKmPerW(), c.outerMm, c.inner)
		}
	}
}

// A loss at 20 °C of 2 W/m behind 5 K·m/W: by 20 °C outside the conductor is at
// 20 + 10/(1 − 2·5·0.00393) = 30.409 °C.
func TestOwnDropByHand(t *testing.T) {
	if c := (strand{lossW20: 2, t1: 5}).conductorC(20, 1); math.Abs(c-30.40908) > 1e-4 {
		t.Errorf("%g °C", c)
	}
	if c := (strand{lossW20: 60, t1: 5}).conductorC(20, 1); !math.IsInf(c, 1) {
		t.Errorf("%g °C where the heating feeds on itself without end", c)
	}
}
