package solve

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Every behaviour that a design may name has a row of its own, draws its rated
// current at its rated voltage, and near there follows the voltage as AtVoltage
// says. 0.9 of the voltage is above every law's fold.
func TestEveryBehaviourHasItsLaw(t *testing.T) {
	for _, b := range design.Behaviours {
		if _, ok := behaviours[b]; !ok {
			t.Errorf("%s has no row", b)
			continue
		}
		law := behaviourLaw(&circuit.LoadSpec{Behaves: b, RatedV: 12}, 60)
		for ratio, want := range map[float64]float64{1: 5, 0.9: 5 * AtVoltage(b, 0.9)} {
			if amps, _ := law.At(12 * ratio); math.Abs(amps-want) > 1e-9 {
				t.Errorf("%s: 60 W at %g V draw %g A, want %g A", b, 12*ratio, amps, want)
			}
		}
	}
	if len(behaviours) != len(design.Behaviours) {
		t.Errorf("%d rows for %d behaviours", len(behaviours), len(design.Behaviours))
	}
}
