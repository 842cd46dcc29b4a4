package battery_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/library"
)

// What is left after the days until a charge is reached is that charge; by hand, 0.1 A for a day from 12 Ah takes a fifth,
// and AGM alone loses 5 % in 30 days at 20 °C.
func TestChargeAfter(t *testing.T) {
	agm := library.Default().Chemistry("AGM")
	lossless := *agm
	lossless.SelfDischarge = 0
	of := func(c *library.Chemistry) *battery.Battery {
		return battery.New(&design.Battery{Chemistry: c, CapacityAh: design.Quantity{Value: 12, Text: "12 Ah"}, RateH: design.Quantity{Value: 10, Text: "10 h"}}, 12)
	}
	for _, c := range []struct {
		name                            string
		b                               *battery.Battery
		from, drainA, celsius, days, is float64
	}{
		{"drain alone", of(&lossless), 1, 0.1, 20, 1, 0.8},
		{"until it is empty", of(&lossless), 1, 0.1, 20, 5, 0},
		{"below that", of(&lossless), 1, 0.1, 20, 6, 0},
		{"nothing is lost", of(&lossless), 0.7, 0, 20, 100, 0.7},
		{"itself alone", of(agm), 1, 0, 20, 30, 0.95},
		{"itself alone, ten kelvin warmer", of(agm), 1, 0, 30, 30, 0.9025},
		{"no time", of(agm), 0.9, 0.2, 20, 0, 0.9},
	} {
		if got := c.b.ChargeAfter(c.from, c.drainA, c.celsius, c.days); math.Abs(got-c.is) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.name, got, c.is)
		}
	}
	for _, drain := range []float64{0, 0.001, 0.05, 0.4} {
		for _, to := range []float64{0.9, 0.5, 0.1} {
			days := of(agm).DaysBetween(1, to, drain, 25)
			if got := of(agm).ChargeAfter(1, drain, 25, days); math.Abs(got-to) > 1e-9 {
				t.Errorf("%g A: after %g days %g, want %g", drain, days, got, to)
			}
		}
	}
}
