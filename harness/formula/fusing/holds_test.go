package fusing_test

import (
	"math"
	"testing"

	"fusewright/harness/formula/fusing"
	"fusewright/library"
)

// TestHolds: the soonest opening of a strip of 100 A is 120 s up to 1.35 times, 1 s at
// 2 times, between them 120 s · (m / 1.35)^−12.18. It must hold 5/3 of the minute, 100 s,
// of which the heat before leaves 1 − m² · on / every. Every 10 min: 120 s · (1 − m²/10) =
// 100 s at m = √(5/3) = 1.291. Every 100 min: 120 s · (1.3682 / 1.35)^−12.18 = 101.9 s, of
// which 1 − 0.0187 are left: 100 s.
func TestHolds(t *testing.T) {
	strip := library.Default().FuseType("strip SF51")
	device := fusing.Device{Type: strip, Rating: strip.Rating(100), AmbientC: 20}
	for _, c := range []struct {
		name        string
		onS, everyS float64
		wantA       float64
	}{
		{"1 min of 10", 60, 600, 129.1},
		{"1 min of 100", 60, 6000, 136.8},
		{"for good", 60, 60, 0},
		{"3 min of 30: it may open after 2", 180, 1800, 0},
		{"no time", 0, 600, 0},
	} {
		if got := device.HoldsA(c.onS, c.everyS); math.Abs(got-c.wantA) > 0.1 {
			t.Errorf("%s: %.2f A, want %.1f A", c.name, got, c.wantA)
		}
	}
	for _, name := range []string{"blade C", "blade F"} {
		blade := library.Default().FuseType(name)
		if got := (fusing.Device{Type: blade, Rating: blade.Rating(15), AmbientC: 20}).HoldsA(60, 600); got != 0 {
			t.Errorf("%s holds %.1f A above its rating; it may open within a second", name, got)
		}
	}
}
