package battery_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/library"
)

// A battery follows the air: of 100 Ah flooded, 30 kg, a cube of 30/2200 m³ has 6 × 0.0571 m² and
// loses 2.740 W/K, so that 30 kJ/K take 10 949 s; of 24 V twice the mass takes the cube root of 2 as
// long. After one time constant 1/e of the difference is left.
func TestBatteryFollowsTheAir(t *testing.T) {
	of := func(chemistry string, ah, volts float64) *battery.Battery {
		return battery.New(&design.Battery{Chemistry: library.Default().Chemistry(chemistry),
			CapacityAh: design.Quantity{Value: ah, Text: "given"}}, volts)
	}
	b := of("flooded", 100, 12)
	lag := b.LagS()
	if math.Abs(lag-10949) > 5 {
		t.Errorf("100 Ah follow within %.0f s", lag)
	}
	if got := of("flooded", 100, 24).LagS() / lag; math.Abs(got-math.Cbrt(2)) > 1e-9 {
		t.Errorf("24 V takes %.4f times as long", got)
	}
	for _, k := range []struct{ seconds, want float64 }{{0, 20}, {lag, -10 + 30/math.E}, {1e6, -10}} {
		if got := b.FollowedC(20, -10, k.seconds); math.Abs(got-k.want) > 1e-6 {
			t.Errorf("after %.0f s in −10 °C: %.4f °C, want %.4f °C", k.seconds, got, k.want)
		}
	}
	if light := of("LiFePO4", 100, 12).LagS(); !(light < lag) {
		t.Errorf("a lighter battery follows in %.0f s", light)
	}
}
