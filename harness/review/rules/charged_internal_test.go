package rules

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/study/ride"
)

// TestChargedInTheColdEdges: a battery is charged from a tenth of a volt above its voltage at rest, and takes none
// below the temperature that is its least; at it it does.
func TestChargedInTheColdEdges(t *testing.T) {
	d := buildtest.Design(t, example.Design(""))
	store := battery.Of(d)
	for _, c := range []struct {
		ambientC, aboveV float64
		want             int
	}{
		{-0.1, 0.105, 1}, {-0.1, 0.1 + 1e-9, 1}, {-0.1, 0.1 - 1e-9, 0}, {-0.1, 0.095, 0}, {0, 0.2, 0}, {0.1, 0.2, 0},
	} {
		p := &Pass{facts: &facts{d: d}, rule: chargedInTheCold}
		r := &ride.Result{Ride: &design.Ride{Name: "frost"}, Legs: []*ride.Leg{{AmbientC: c.ambientC}}}
		p.judgeCold(r, "the battery", 0, store, func(l *ride.Leg) (float64, float64) {
			return 0.8, store.OpenCircuitV(0.8, l.AmbientC) + c.aboveV
		})
		if len(p.found) != c.want {
			t.Errorf("%g °C, %g V above: %d findings, want %d", c.ambientC, c.aboveV, len(p.found), c.want)
		}
	}
}
