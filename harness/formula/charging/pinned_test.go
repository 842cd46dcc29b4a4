package charging_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
	"fusewright/library"
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

// What a kind of charging loses hot, gives at most, and shorts: 30 A less 10 % are 27 A; 14 A to
// spare over a shunt of 1.2 V are 16.8 W. What the design says of the heat goes first.
func TestKindsOfCharging(t *testing.T) {
	lib := library.Default()
	for _, k := range []struct {
		kind          string
		derating      float64 // 0 = not given
		hotA, shortsW float64
	}{
		{"", 0, 30, 0},
		{"stator with shunt regulator", 0, 27, 16.8},
		{"shunt", 0.2, 24, 16.8},
		{"series", 0, 27, 0},
		{"alternator", 0, 22.5, 0},
	} {
		c := &design.Charging{Output: points(1000, 12, 4000, 30, 6000, 29), Kind: lib.Generator(k.kind)}
		if k.derating > 0 {
			c.HotDerating = design.Quantity{Value: k.derating, Text: "given"}
		}
		cold, hot := charging.MostA(c)
		near(t, k.kind+", cold", cold, 30, 0)
		near(t, k.kind+", hot", hot, k.hotA, 1e-12)
		near(t, k.kind+", at 4000 rpm", charging.Of(c).Amps(4000), k.hotA, 1e-12)
		near(t, k.kind+", shorted", charging.ShuntW(c, 14), k.shortsW, 1e-12)
		near(t, k.kind+", nothing to spare", charging.ShuntW(c, -1), 0, 0)
	}
}
