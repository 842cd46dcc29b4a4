package ride

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

func given(v float64) design.Quantity { return design.Quantity{Value: v, Text: "given"} }

// agm is 12 Ah, with a reserve of 60 % at 25 °C.
func agm(d *design.Design) *battery.Battery {
	d.Battery.Chemistry, d.Battery.CapacityAh = library.Default().Chemistry("AGM"), given(12)
	return battery.New(&d.Battery, 12)
}

// The charging system holds 14.4 V behind 1 mΩ up to 10 A.
func TestChargingByHand(t *testing.T) {
	b := &bus{regulatedV: 14.4, chargerOhm: 0.001, limitA: 10}
	for volts, want := range map[float64]float64{15: 0, 14.4: 0, 14.395: 5, 14.39: 10, 14: 10, 0: 10} {
		if got := b.chargingA(volts); math.Abs(got-want) > 1e-9 {
			t.Errorf("%g V: %g A, want %g A", volts, got, want)
		}
	}
	for systemV, want := range map[float64]float64{12: 6, 24: 12} {
		c := &circuit.Circuit{Design: &design.Design{SystemV: given(systemV)}}
		if got := newBus(c, nil, &Leg{}, nil).floorV; got != want {
			t.Errorf("%g V: followed down to %g V, want %g V", systemV, got, want)
		}
	}
}

// An hour between 2 A out and 4 A out, and from 6 A in to 2 A out, with 9 A and
// 11 A of loads.
func TestSumsByHand(t *testing.T) {
	s, l := &simulation{}, &Leg{}
	s.count(l, Point{BatteryA: 2, LoadA: 9, ChargingA: 7}, Point{BatteryA: 4, LoadA: 11, ChargingA: 7}, 3600)
	if l.TakenAh != 3 || l.GivenAh != 0 || l.UsedAh != 10 || l.ChargingAh != 7 {
		t.Errorf("%+v", l)
	}
	s.count(l, Point{BatteryA: -6}, Point{BatteryA: 2}, 1800)
	if l.TakenAh != 3.5 || l.GivenAh != 1.5 {
		t.Errorf("%+v", l)
	}
}

// A ride is below its reserve from the moment it passes it; at it is not below.
func TestReserveAtTheEdge(t *testing.T) {
	s := &simulation{result: &Result{ReserveS: math.NaN(), LowestCharge: math.Inf(1)},
		at: &bus{demand: &demand{step: 0.1, trouble: map[int]string{}}}}
	l := &Leg{StartReserve: 0.6, Leg: &design.Leg{Key: design.KeyOn, EngineRPM: 3000}}
	for _, p := range []struct {
		timeS, charge, want float64
	}{{0, 0.7, math.NaN()}, {100, 0.6, math.NaN()}, {200, 0.65, math.NaN()}, {300, 0.55, 250}, {400, 0.5, 250}} {
		s.timeS = p.timeS
		s.note(l, Point{Charge: p.charge}, true)
		if got := s.result.ReserveS; !(math.Abs(got-p.want) < 1e-9) && !(math.IsNaN(got) && math.IsNaN(p.want)) {
			t.Errorf("%g at %g s: below since %g s, want %g s", p.charge, p.timeS, got, p.want)
		}
	}
}

// What a leg begins with: 25 °C where nothing gives the temperature, and a word
// where the engine may not start.
func TestLegAtTheEdges(t *testing.T) {
	d := &design.Design{}
	bat := agm(d)
	for _, c := range []struct {
		name    string
		charge  float64
		leg     design.Leg
		trouble bool
	}{
		{"at the reserve", bat.StartReserve(25), design.Leg{Key: design.KeyOn, EngineRPM: 1000}, false},
		{"below it", bat.StartReserve(25) - 1e-9, design.Leg{Key: design.KeyOn, EngineRPM: 1000}, true},
		{"below it, standing", 0.5, design.Leg{Key: design.KeyOn}, false},
		{"below it, key off", 0.5, design.Leg{Key: design.KeyOff, EngineRPM: 1000}, false},
	} {
		s := &simulation{c: &circuit.Circuit{Design: d}, bat: bat, charge: c.charge, result: &Result{}}
		l := s.newLeg(&c.leg)
		if (l.Trouble != "") != c.trouble || l.AmbientC != 25 || !l.AmbientAssumed || l.StartReserve != bat.StartReserve(25) {
			t.Errorf("%s: %q at %g °C", c.name, l.Trouble, l.AmbientC)
		}
	}
	s := &simulation{bat: bat, result: &Result{}}
	cold := &Leg{AmbientC: -10, BatteryC: -10}
	empty := bat.EmptyCharge(-10)
	for charge, want := range map[float64]bool{empty + 0.01: false, empty: true, empty - 0.01: true} {
		if got := s.isEmpty(cold, Point{Charge: 0.9}, Point{Charge: charge, BatteryA: 1}); got != want {
			t.Errorf("%g of charge, empty at %g: %t", charge, empty, got)
		}
	}
}

func TestSharesByHand(t *testing.T) {
	if notOverfull(1.2) != 1 || notOverfull(0.9) != 0.9 || notOverfull(-0.1) != -0.1 {
		t.Error("a battery is overfull")
	}
}
