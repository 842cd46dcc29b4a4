package rules

import (
	"math"
	"strings"
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

// A resistor that takes a twentieth of what its load has is a joint; one that takes more holds it back: 0.5 V of 10 V.
func TestHeldBackFromATwentieth(t *testing.T) {
	p := passOf(t, loadUndervoltage, strings.Replace(resistorOverload.Bad, "{resistance: 7 Ω,", "{power: 21 W, behaves: filament lamp,", 1))
	b, dropper := loadBranch(part(t, p, "work lamp")), part(t, p, "dropper").Branches[0]
	setVolts(p, b, 10)
	for held, want := range map[float64]bool{0.46: false, 0.5: false, 0.51: true, 0.54: true} {
		setVolts(p, dropper, held)
		for _, s := range p.in.Solutions {
			if s.LoadOn[b.Index] && p.heldBack(s, b) != want {
				t.Errorf("%g V before 10 V: held back %t, want %t", held, !want, want)
			}
		}
	}
}
