package rules

import (
	"math"
	"strings"
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

// Lithium charged in earnest is half full, 13.2 + 0.1 ÷ 3 = 13.233 V at rest by the library, and has its resistance, were that the same
// when empty: over 1 Ω and some 34 mΩ of cable, relay and fuse 14.3 V drive 1.067 V ÷ 1.034 Ω = 1.032 A into it.
func TestChargedTooFastAtHalf(t *testing.T) {
	p := passOf(t, chargedTooFast, strings.Replace(relayLink("LiFePO4", "10 A", ""), "resistance: 12 mΩ", "resistance: 1 Ω", 1))
	house := part(t, p, "house")
	bank := house.Source.(*design.Bank)
	even := *bank.Store.Chemistry
	even.EmptyOhmRatio = 1
	bank.Store.Chemistry = &even
	if got := p.chargedByEngineA(house, bank); math.Abs(got-1.032) > 0.008 {
		t.Errorf("%.4f A, want 1.032 A", got)
	}
}
