package rules

import (
	"math"
	"testing"
)

// A fan of 90 W at 12 V: 7.5 A, standing 5 × 7.5 = 37.5 A, so Ra = 0.32 Ω and E = 12 − 2.4 = 9.6 V. Behind 0.6 Ω at
// 14 V: 0.92·7.5·y² + 9.6·y = 14, y = 0.8896, I = 7.5·y² = 5.94 A. Without a resistor at its rated 12 V it draws 7.5 A;
// behind 1.2 Ω 11.4·y² + 9.6·y = 12, y = 0.688, I = 3.55 A.
func TestFanBehindResistor(t *testing.T) {
	m := motor{ratedA: 7.5, ratedV: 12, ohm: 12 / 37.5}
	for _, c := range [][3]float64{{0.6, 14, 5.936}, {0, 12, 7.5}, {1.2, 12, 3.550}} {
		if a := m.fanA(c[1], c[0]); math.Abs(a-c[2]) > 0.002 {
			t.Errorf("%.1f Ω at %.0f V: %.4f A, by hand %.3f A", c[0], c[1], a, c[2])
		}
	}
}
