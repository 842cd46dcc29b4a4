package ride

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/library"
)

// A battery is charged from a tenth of a volt above its voltage at rest, and lithium takes none below 0 °C; at that it does.
func TestFrostEdges(t *testing.T) {
	d := &design.Design{SystemV: given(12)}
	d.Battery.Chemistry, d.Battery.CapacityAh = library.Default().Chemistry("LiFePO4"), given(12)
	store := battery.Of(d)
	for _, c := range []struct {
		ambientC, aboveV float64
		want             int
	}{
		{-0.1, 0.105, 1}, {-0.1, 0.1 + 1e-9, 1}, {-0.1, 0.1 - 1e-9, 0}, {-0.1, 0.095, 0}, {0, 0.2, 0}, {0.1, 0.2, 0},
	} {
		r := &Result{Legs: []*Leg{{AmbientC: c.ambientC, FromCharge: 0.8, HighestV: store.OpenCircuitV(0.8, c.ambientC) + c.aboveV}}}
		if got := frosts(d, r); len(got) != c.want {
			t.Errorf("%g °C, %g V above: %v, want %d", c.ambientC, c.aboveV, got, c.want)
		}
	}
}
