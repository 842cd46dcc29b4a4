package conductor

import (
	"math"
	"testing"

	"fusewright/library"
)

// What a wire gives off at 120 °C in 40 °C: by a share of 0.5 a quarter of what it
// gives off alone, with 30 K from the wires beside it what it gives off alone at 90 °C,
// by a share of 0.8 0.64 of that, and a quarter of what it gives off at 70 °C where the
// others spread half of its current in service at 100 °C. The steady current is where it equals I²R.
func TestOutletByHand(t *testing.T) {
	size := library.Default().WireType("ISO 6722 thin wall class B").Sizes[3]
	b := NewBalance(InsulatedWire(size, nil), StillAir{AmbientC: 40})
	at120, at90, at70 := b.LossWPerM(120), b.LossWPerM(90), b.LossWPerM(70)
	for _, c := range []struct {
		name  string
		o     Outlet
		wantW float64
	}{
		{"share alone", Outlet{Share: 0.5}, at120 / 4},
		{"what others add", Outlet{Share: 1, BesideK: 30}, at90},
		{"both", Outlet{Share: 0.8, BesideK: 30}, 0.64 * at90},
		{"no more than when they are cold", Outlet{Share: 1, BesideK: 30, Cold: 0.5}, at120 / 4},
		{"more than that when cold", Outlet{Share: 0.8, BesideK: 30, Cold: 0.9}, 0.64 * at90},
		{"nothing beside it is warm", Outlet{Share: 1, Cold: 0.5}, at120},
		{"they spread its heat of 100 °C", Outlet{0.8, 30, 0.5, 100, 0}, 0.64*at90 + 0.25*at70},
		{"it is cooler than that", Outlet{0.8, 30, 0.5, 130, 0}, 0.89 * at90},
	} {
		near(t, c.name, c.o.LossWPerM(b, 120), c.wantW, 1e-9)
		amps := math.Sqrt(c.wantW / AtTemperature(b.wire.OhmPerM20, 120))
		near(t, c.name+", current", c.o.CurrentA(b, 120), amps, 1e-9)
		near(t, c.name+", steady", c.o.SteadyC(b, amps), 120, 1e-3)
	}
	o := Outlet{Share: 0.5, BesideK: 30}
	if o.LossWPerM(b, 69) != 0 || o.CurrentA(b, 70) != 0 {
		t.Error("gives off heat where the others make it hotter")
	}
	if !math.IsInf(o.SteadyC(b, 1000), 1) {
		t.Error("copper bears 1000 A")
	}
}

// Bundle, cover and altitude are one share; in full service a wire is at its limit, or as
// hot as the others make its place.
func TestOutletOfAWire(t *testing.T) {
	for _, c := range []struct{ riseK, ambientC, serviceC float64 }{{0, 40, 90}, {50, 40, 90}, {50.5, 40, 90.5}, {0, 91, 91}} {
		a := Allowed{LimitC: 90, Beside: Beside{Share: 0, RiseK: c.riseK, Own: 0.5}, CoverShare: 0.8, AltShare: 0.9}
		o := a.Outlet(c.ambientC)
		if o.BesideK != c.riseK || math.Abs(o.Share-0.36) > 1e-12 || a.ServiceC(c.ambientC) != c.serviceC {
			t.Errorf("%+v: %+v, %g °C", c, o, a.ServiceC(c.ambientC))
		}
		a.Beside.Own = 1.5
		if o := a.Outlet(c.ambientC); math.Abs(o.Share-0.72) > 1e-12 || math.Abs(o.Spread*o.Spread-1.25*0.72*0.72) > 1e-12 || o.SpreadC != c.serviceC {
			t.Errorf("the others spread the heat of a fault: %+v", o)
		}
	}
}

// Where a published factor leaves less than the heat balance, what a wire gives off in a
// fault is less by it, and how hot it gets in service is not.
func TestAtMost(t *testing.T) {
	b := Beside{Share: 0.8, RiseK: 5, Own: 0.9}
	got := b.AtMost(0.6)
	if math.Abs(got.Held-0.75) > 1e-12 || got.Share != 0.6 || got.Own != 0.9 || b.AtMost(0.9) != b {
		t.Errorf("%+v, %+v", got, b.AtMost(0.9))
	}
	a := Allowed{LimitC: 90, Beside: got, CoverShare: 0.8, AltShare: 0.9}
	if o := a.Outlet(40); math.Abs(o.Share-0.9*0.72*0.75) > 1e-12 {
		t.Errorf("%+v", o)
	}
}
