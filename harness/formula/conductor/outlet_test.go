package conductor

import (
	"math"
	"testing"

	"fusewright/library"
)

// What a wire gives off at 120 °C in 40 °C: by a share of 0.5 a quarter of what it
// gives off alone, with 30 K from the wires beside it what it gives off alone at 90 °C,
// less a fifth of the current by a cover 0.64 of that. The greater holds, and the
// steady current of each law is where it equals I²R.
func TestOutletByHand(t *testing.T) {
	size := library.Default().WireType("ISO 6722 thin wall class B").Sizes[3]
	b := NewBalance(InsulatedWire(size, nil), StillAir{AmbientC: 40})
	at120, at90 := b.LossWPerM(120), b.LossWPerM(90)
	for _, c := range []struct {
		name  string
		o     Outlet
		wantW float64
	}{
		{"share alone", Outlet{Share: 0.5}, at120 / 4},
		{"neighbours not known", Outlet{0.5, 1, math.Inf(1)}, at120 / 4},
		{"what they really add", Outlet{0.5, 1, 30}, at90},
		{"under a cover", Outlet{0.4, 0.8, 30}, 0.64 * at90},
		{"they leave much", Outlet{0.99, 1, 79}, 0.9801 * at120},
	} {
		near(t, c.name, c.o.LossWPerM(b, 120), c.wantW, 1e-9)
		amps := math.Sqrt(c.wantW / AtTemperature(b.wire.OhmPerM20, 120))
		near(t, c.name+", steady", c.o.SteadyC(b, amps), 120, 1e-5)
	}
	o := Outlet{0.5, 1, 30} // the limit of 80 °C by 40 K · (1 − 0.5²)
	if got := o.SteadyC(b, 0.5*b.CurrentA(80)); math.Abs(got-80) > 1e-5 {
		t.Errorf("at the allowed current: %g °C, want the limit of 80 °C", got)
	}
	if !math.IsInf(o.SteadyC(b, 1000), 1) {
		t.Error("copper bears 1000 A")
	}
}

// A bundle that leaves half of 50 K adds 37.5 K; in a place as hot as the limit, and
// beside wires that leave less than a hundredth, that is not known.
func TestWhatIsAddedBeside(t *testing.T) {
	for _, c := range []struct{ share, ambientC, wantK float64 }{
		{0.5, 40, 37.5}, {0.01, 40, 49.995}, {0.0099, 40, math.Inf(1)}, {0.5, 90, math.Inf(1)}, {0.5, 89, 0.75}} {
		a := Allowed{LimitC: 90, BundleShare: c.share, CoverShare: 0.8, AltShare: 0.9}
		o := a.Outlet(c.ambientC)
		if o.BesideK != c.wantK && math.Abs(o.BesideK-c.wantK) > 1e-9 || o.Share != a.Share() || math.Abs(o.OpenShare-0.72) > 1e-12 {
			t.Errorf("%+v: %+v", c, o)
		}
	}
}
