package fusing

import (
	"math"
	"testing"

	"fusewright/library"
)

// hundred is a fuse of 100 A that carries it for good and at 200 A opens within 10
// and 40 s, in the middle 20 s: (200/100)² = 4, τ = 20 s/ln(4/3) = 69.52 s, so that
// heat fades by 3/4 in 20 s.
func hundred() Device {
	t := &library.FuseType{Name: "slow", Band: []library.TimePoint{{Multiple: 1, MinS: 360000}, {Multiple: 2, MinS: 10, MaxS: 40}}}
	return Device{Type: t, Rating: &library.FuseRating{RatingA: 100}, AmbientC: RatedC}
}

// Pulses of 10 s of 200 A warm it to 4·(1 − √0.75) = 0.536 at first. Every 30 s: 0.402
// is left, 0.884, 0.663, and in the third it comes to 1 after 20 s · ln(3.337/3)/ln(4/3)
// = 7.40 s. Every 45 s: 0.536, 0.816, 0.963, in the fourth 20 s·ln(3.41775/3)/ln(4/3) = 9.06 s.
// It starts each cycle with 4 − 3/√0.75 = 0.536 where it just does not open: of 1 that is left after
// 20 s·ln(1/0.5359)/ln(4/3) = 43.37 s, every 53.37 s.
func TestPulsesByHand(t *testing.T) {
	for _, c := range []struct {
		name  string
		p     Pulses
		by    Edge
		cycle int
		after float64
	}{
		{"every 30 s", Pulses{200, 0, 10, 30}, Usual, 3, 7.401},
		{"every 45 s", Pulses{200, 0, 10, 45}, Usual, 4, 9.065},
		{"just too often", Pulses{200, 0, 10, 53.3}, Usual, 10, 10},
		{"just seldom enough", Pulses{200, 0, 10, 53.4}, Usual, 0, 0},
		{"one pulse below", Pulses{200, 0, 19.99, 3600}, Usual, 0, 0},
		{"one pulse at", Pulses{200, 0, 20, 3600}, Usual, 1, 20},
		{"one pulse above", Pulses{200, 0, 25, 3600}, Usual, 1, 20},
		{"the fastest below", Pulses{200, 0, 9.99, 3600}, Fastest, 0, 0},
		{"the fastest at", Pulses{200, 0, 10, 3600}, Fastest, 1, 10},
		// half the rating before is a quarter of the heat: 20 s·ln(3.75/3)/ln(4/3)
		{"warm before", Pulses{200, 50, 16, 3600}, Usual, 1, 15.513},
		{"warm before, below", Pulses{200, 50, 15, 3600}, Usual, 0, 0},
		{"at its rating", Pulses{100, 0, 3000, 3600}, Fastest, 0, 0},
		// straight on log axes from 100 h at the rating: 6787 s at 1.3 times, τ = 7577 s; what is left
		// before the third pulse is 0.828
		{"between, the fastest", Pulses{130, 0, 3000, 3600}, Fastest, 3, 1687.058},
		{"little over the rating, the fastest", Pulses{101, 0, 3000, 3600}, Fastest, 0, 0}, // 0.85 of the heat for good
		{"between, no slow edge there", Pulses{101, 0, 3000, 3600}, Usual, 0, 0},
		{"too warm before", Pulses{200, 100, 1, 3600}, Usual, 1, 0},
		{"nothing flows", Pulses{0, 0, 1, 3600}, Fastest, 0, 0},
	} {
		got := hundred().Pulsed(c.p, c.by)
		if c.name == "just too often" { // how many is a matter of the last digits
			if got.Cycle < 8 || got.AfterS > 10 {
				t.Errorf("%s: %+v", c.name, got)
			}
			continue
		}
		if got.Cycle != c.cycle || math.Abs(got.AfterS-c.after) > 2e-3 {
			t.Errorf("%s: %+v, want cycle %d after %g s", c.name, got, c.cycle, c.after)
		}
	}
}

// Over cycles that are short against 69.52 s the root of the mean square: a second of
// 200 A every four is 100 A for good (1.4 % more by the formula). In a pulse as long as
// τ every 10 τ it is √(1 − 1/e) of it: 159.0 A.
func TestPulsesForGood(t *testing.T) {
	tau := 20 / math.Log(4.0/3)
	for _, c := range []struct {
		p     Pulses
		wantA float64
	}{{Pulses{200, 0, 1, 4}, 101.08}, {Pulses{200, 0, tau, 10 * tau}, 159.02}, {Pulses{200, 200, 1, 4}, 200},
		{Pulses{200, 0, 4, 4}, 200}, {Pulses{200, 100, 0.01, 0.02}, math.Sqrt(25000)}} {
		if got := hundred().ForGoodA(c.p); math.Abs(got-c.wantA) > 0.02 {
			t.Errorf("%+v: %.3f A, want %g A", c.p, got, c.wantA)
		}
	}
	d := hundred()
	d.Type = &library.FuseType{Band: []library.TimePoint{{Multiple: 1, MinS: 360000}, {Multiple: 2, MaxS: 40}}}
	if got := d.ForGoodA(Pulses{200, 0, 1, 4}); got != 200 {
		t.Errorf("without a lower edge: %g A, want the 200 A while on", got)
	}
}

// Where it carries 100 A for good: every 53.37 s for 10 s 200 A by the usual; 1 of 4 s
// what the mean heat leaves, 100 A · 200/101.08; nothing more than for good where
// that flows between.
func TestMostInPulses(t *testing.T) {
	for _, c := range []struct {
		p     Pulses
		wantA float64
	}{{Pulses{0, 0, 10, 53.37}, 200}, {Pulses{0, 0, 1, 4}, 197.86}, {Pulses{0, 100, 1, 4}, 100}} {
		if got := hundred().PulsedA(c.p, 100, Usual); math.Abs(got-c.wantA) > 0.1 {
			t.Errorf("%+v: %.3f A, want %g A", c.p, got, c.wantA)
		}
	}
	if got := (Device{}).PulsedA(Pulses{0, 0, 1, 4}, 7, Usual); got != 7 {
		t.Errorf("not known: %g A, want the 7 A for good", got)
	}
}

// TestSlow: a device that holds twice its rating for a second at the soonest is slow; one
// that may open a hundredth sooner is not, and carries in a pulse what it does for good.
func TestSlow(t *testing.T) {
	for soonestS, slow := range map[float64]bool{1: true, 0.99: false} {
		d := hundred()
		d.Type.Band = []library.TimePoint{{Multiple: 1, MinS: 360000}, {Multiple: 2, MinS: soonestS, MaxS: 40}}
		if got := d.Slow(); got != slow {
			t.Errorf("%g s at twice the rating: slow %t", soonestS, got)
		}
		if most := d.WhileOnA(Pulses{0, 0, 0.1, 3600}, 80, Usual); most > 100 != slow {
			t.Errorf("%g s at twice the rating: %g A for a tenth of a second", soonestS, most)
		}
	}
}

// TestHoldsWithTimeToSpare: at twice its rating the fastest of its kind opens after 10 s,
// so that a fuse is taken for that current where it flows for 6 s, five thirds of which that is.
func TestHoldsWithTimeToSpare(t *testing.T) {
	for onS, holds := range map[float64]bool{5.9: true, 6.1: false} {
		if most := hundred().WhileOnA(Pulses{0, 0, onS, 1e6}, 80, Fastest); most >= 200 != holds {
			t.Errorf("%g s: %g A", onS, most)
		}
	}
}

// TestCarryingIsNoOpening: a lower limit of four hours is one of carrying.
func TestCarryingIsNoOpening(t *testing.T) {
	for minS, want := range map[float64]float64{4 * 3600: 0, 4*3600 - 1: 4*3600 - 1, 5 * 3600: 0} {
		if got := opensAfter(library.TimePoint{MinS: minS}); got != want {
			t.Errorf("%g s: %g, want %g", minS, got, want)
		}
	}
}
