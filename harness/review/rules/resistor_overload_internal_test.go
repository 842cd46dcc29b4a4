package rules

import (
	"strings"
	"testing"
)

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
