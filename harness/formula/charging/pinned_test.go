package charging_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
)

// Where nothing is asked, the speed given is enough, even one below the cut-in.
func TestSpeedWhereNothingIsAsked(t *testing.T) {
	c := curve(1000, 12, 1500, 18, 4000, 31)
	for _, k := range []struct{ amps, from, want float64 }{
		{0, 200, 200}, {0, 1200, 1200}, {12, 1000, 1000}, {12, 200, 1000}, {31, 5000, 5000},
	} {
		near(t, "speed", c.Speed(k.amps, k.from), k.want, 1e-9)
	}
}

func TestHotAndColdOutput(t *testing.T) {
	d := &design.Design{Charging: design.Charging{Output: points(1000, 12, 1500, 18, 4000, 31)}}
	near(t, "no derating given", charging.OutputA(d, 4000), 31, 1e-12)
	d.Charging.HotDerating = design.Quantity{Value: 0.25, Text: "25 %"}
	near(t, "cold", charging.ColdA(d, 4000), 31, 1e-12)
	near(t, "hot", charging.OutputA(d, 4000), 23.25, 1e-12)
	near(t, "break-even of 9 A hot, 12 A cold", charging.BreakEven(d, 9), 1000, 1e-9)
}
