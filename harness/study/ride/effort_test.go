package ride_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/study/ride"
)

// A house battery of ohms in place of milliohms, and one that is linked straight to the
// first: chargers swing there, and each moment takes a hundred times the usual. A ride ends
// where it has taken too much; a usual one takes a small part of that.
func TestRideTakesSoMuchAndNoMore(t *testing.T) {
	text, err := os.ReadFile("../../../designs/hay-wain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const most, moment = 200_000, 20_000
	for _, c := range []struct {
		name, old, with string
		most            int
	}{
		{"as it is", "", "", most / 20},
		{"ohms", "resistance: 4 mΩ", "resistance: 10 Ω", most + moment},
		{"linked", "fed by: [booster end, roof end]", "fed by: [booster end, roof end, battery]", most + moment},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !strings.Contains(string(text), c.old) {
				t.Fatal("nothing to change")
			}
			b := build(t, strings.Replace(string(text), c.old, c.with, 1))
			r, err := ride.Simulate(b, b.Design.Rides[0], ride.Options{Tolerance: 1e-5})
			if err != nil {
				t.Fatal(err)
			}
			last := r.Legs[len(r.Legs)-1]
			t.Logf("%d steps, given up %t, at %g s: %s", r.Effort, r.GivenUp, last.ToS, last.Trouble)
			if r.Effort == 0 || r.Effort > c.most || r.GivenUp != (r.Effort > most) || r.GivenUp && last.Trouble == "" {
				t.Errorf("%d steps, given up %t, %q", r.Effort, r.GivenUp, last.Trouble)
			}
		})
	}
}

// A start battery that has just been charged stands above the volts at which the DC-DC charger stops, and comes down to them for hours:
// fine steps there are too many, and coarse ones follow the ride to its end.
func TestRideThroughTheTailOfACharger(t *testing.T) {
	text, err := os.ReadFile("../../../designs/hay-wain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const day = "      - {lasts: 30 min, situation: driving}\n      - {lasts: 9 h, situation: parked, ambient: 70 °C}\n      - {lasts: 30 min, situation: driving}\n      - {lasts: 14 h, situation: summer night, ambient: 70 °C}\n"
	b := build(t, strings.Replace(string(text), "rides:\n", "rides:\n  round the clock:\n    charge: {house: 60 %}\n    legs:\n"+day, 1))
	r, err := ride.Simulate(b, b.Design.Rides[0], ride.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if last := r.Legs[len(r.Legs)-1]; r.GivenUp || len(r.Legs) != 4 || math.Abs(last.ToS-24*3600) > 1 {
		t.Errorf("given up %t, in leg %d, at %g s", r.GivenUp, len(r.Legs), last.ToS)
	}
	if !slices.ContainsFunc(r.Caveats, func(c string) bool { return strings.Contains(c, "coarse steps") }) {
		t.Error("nothing is said of coarse steps")
	}
}
