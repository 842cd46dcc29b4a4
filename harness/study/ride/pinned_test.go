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
	s := &simulation{bat: agm(&design.Design{}), result: &Result{ReserveS: math.NaN(), LowestCharge: math.Inf(1)},
		at: &bus{demand: &demand{step: 0.1, trouble: map[int]string{}}}}
	l := &Leg{AmbientC: 25, BatteryC: 25, Leg: &design.Leg{Key: design.KeyOn, EngineRPM: 3000}}
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
	// a start takes 1/3 Ah of the 12, and no more than there is
	for charge, want := range map[float64]float64{0.5: 0.5 - 1.0/36, 0.01: 0} {
		s := &simulation{c: &circuit.Circuit{Design: d}, bat: bat, charge: charge, result: &Result{StartAh: 1.0 / 3}}
		if l := s.newLeg(&design.Leg{Key: design.KeyOn, EngineRPM: 1000}); math.Abs(l.FromCharge-want) > 1e-12 {
			t.Errorf("started at %g of charge: %g left, want %g", charge, l.FromCharge, want)
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

// The protection of lithium, at and beyond each limit: 40 A of the design's, 10 V and 15.2 V of the library, twice that on
// 24 V; empty of what is left at 25 °C. Lead has none, nor has lithium of 12 Ah: they open on nothing but emptiness.
func TestProtectionAtItsEdges(t *testing.T) {
	of := func(chemistry string, capacityAh, boardA, systemV float64) *store {
		d := &design.Design{}
		d.Battery.Chemistry, d.Battery.CapacityAh = library.Default().Chemistry(chemistry), given(capacityAh)
		if boardA > 0 {
			d.Battery.Board, d.Battery.Board.Pos.Line = given(boardA), 1
		}
		s := storeOf(&d.Battery, systemV)
		return &s
	}
	lithium, double, lead, small := of("LiFePO4", 100, 40, 12), of("LiFePO4", 100, 40, 24), of("AGM", 100, 0, 12), of("LiFePO4", 12, 0, 12)
	unbound := *of("LiFePO4", 100, 40, 12)
	unbound.boardHighV = 0
	for i, c := range []struct {
		of   *store
		p    BankPoint
		want Cause
	}{
		{lithium, BankPoint{Charge: 0.5, V: 13, A: 40}, Gives}, {lithium, BankPoint{Charge: 0.5, V: 13, A: 40.01}, Overloaded},
		{lithium, BankPoint{Charge: 0.5, V: 10, A: 10}, Gives}, {lithium, BankPoint{Charge: 0.5, V: 9.99, A: 10}, TooLow},
		{lithium, BankPoint{Charge: 0.5, V: 9.99}, Gives}, {lithium, BankPoint{Charge: 0, V: 13}, Gives},
		{lithium, BankPoint{Charge: 0, V: 13, A: 1}, Empty}, {lithium, BankPoint{Charge: 0.001, V: 13, A: 1}, Gives},
		{lithium, BankPoint{Charge: 1, V: 15.2, A: -1}, Gives}, {lithium, BankPoint{Charge: 1, V: 15.21, A: -1}, Overcharged},
		{double, BankPoint{Charge: 0.5, V: 20, A: 1}, Gives}, {double, BankPoint{Charge: 0.5, V: 19.99, A: 1}, TooLow},
		{double, BankPoint{Charge: 1, V: 30.4, A: -1}, Gives}, {double, BankPoint{Charge: 1, V: 30.41, A: -1}, Overcharged},
		{lead, BankPoint{Charge: 0.5, V: 5, A: 1000}, Gives}, {lead, BankPoint{Charge: 1, V: 20, A: -1}, Gives},
		{small, BankPoint{Charge: 0.5, V: 5, A: 1000}, Gives}, {small, BankPoint{Charge: 1, V: 20, A: -1}, Gives},
		{&unbound, BankPoint{Charge: 1, V: 20, A: -1}, Gives},
	} {
		if got, why := c.of.opens(c.p, 25); got != c.want {
			t.Errorf("%d: %v: %v (%s), want %v", i, c.p, got, why, c.want)
		}
	}
	// one that has opened closes on more than its own 13.233 V at half of its charge, and stays open above 15.2 V
	for volts, want := range map[float64]bool{13.23: false, 13.24: true, 15.2: true, 15.21: false} {
		if b := (&bank{store: *lithium, apart: TooLow}); b.turns(BankPoint{Charge: 0.5, V: volts}, 25) != want {
			t.Errorf("%g V: closes %t", volts, !want)
		}
	}
}

// A starter on the list of a leg is the design's own; no other load with a type is.
func TestStarterOn(t *testing.T) {
	for name, want := range map[string]bool{"starter motorcycle": true, "horn": false, "": false} {
		if got := starterOn(&design.Leg{On: []*design.Load{{Type: library.Default().Load(name)}}}); got != want {
			t.Errorf("%q: a starter %t", name, got)
		}
	}
}
