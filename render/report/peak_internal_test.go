package report

import "testing"

// A peak is said from 2 % above the average and 1 mA on.
func TestPeaks(t *testing.T) {
	for _, c := range []struct {
		peakA, meanA float64
		want         bool
	}{
		{10.19, 10, false}, {10.2, 10, false}, {10.21, 10, true}, {0.001, -1, false}, {0.0011, -1, true}, {-2, -1, false}, {3.3, 0, true},
	} {
		if got := peaks(c.peakA, c.meanA); got != c.want {
			t.Errorf("%g A at peak, %g A on average: %t", c.peakA, c.meanA, got)
		}
	}
}

// Of charging, what is used at peak is said to be so where the budget's average is less.
func TestChargingAtPeakIsSaid(t *testing.T) {
	of := func(v float64) *float64 { return &v }
	for usedA, want := range map[float64]string{11.6: "charging peak 11.6 A of 21.2 A", 4.7: "charging 4.70 A of 21.2 A"} {
		rep := &Report{Budget: &Budget{Lines: []BudgetLine{{Situation: "waiting", EngineRPM: 800, OutputA: of(21.2), SpareA: of(16.5), BatteryA: of(-0.4)}}}}
		got := rep.givenShort(Situation{Name: "waiting", BatteryA: of(-0.4), ChargingA: of(usedA)})
		if got != "battery takes 400 mA; "+want {
			t.Errorf("%g A used: %q", usedA, got)
		}
	}
}
