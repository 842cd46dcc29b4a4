package solve_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
)

const cableDesign = `fusewright: 1
title: charging cable
vehicle: invented
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 5 mΩ}
charging: {regulated: 14.4 V, output: {1000 rpm: 60 A, 3000 rpm: 60 A}, idle: 1000 rpm, cruise: 3000 rpm, hot derating: 0 %, senses: SENSES, fed by: charge fuse, wire: {size: 10 mm², length: 4 m}}
fuses:
  charge fuse: {type: marine strip, rating: 100 A, fed by: battery, wire: {size: 16 mm², length: 150 mm}}
loads:
  heater: {current: LOAD, rated at: 14.4 V, behaves: constant power, fed by: battery, wire: {size: 16 mm², length: 1 m}, returns to: battery negative, return wire: {size: 16 mm², length: 1 m}}
situations: {driving: {engine: cruise, on: all}}
`

// TestChargingCable by Ohm's law: a regulator that senses the battery holds its posts at 14.4 V less
// its own slope, 1 mΩ times what it gives; one that senses the machine leaves them what the cable and
// its fuse lose below that. At its limit it gives 60 A whatever it senses, and the battery the rest.
func TestChargingCable(t *testing.T) {
	for _, k := range []struct {
		senses, load string
		lost         bool // the cable's drop is missing at the posts
		limited      bool
	}{
		{"battery", "40 A", false, false},
		{"machine", "40 A", true, false},
		{"battery", "80 A", false, true},
		{"machine", "80 A", false, true},
	} {
		text := strings.NewReplacer("SENSES", k.senses, "LOAD", k.load).Replace(cableDesign)
		c := buildtest.Circuit(t, text)
		d := c.Design
		s := solve.Solve(c, d.Situations[0], solve.Options{})
		name := k.senses + ", " + k.load
		if s.Status != solve.Converged || s.Limited != k.limited {
			t.Errorf("%s: %s, limited %v", name, s.Status, s.Limited)
			continue
		}
		way := 0.0 // from the battery's post to the machine
		for n := c.PartOf(&d.Charging).Terminal("B+").Node; !c.IsPost(n); n = n.FedBy()[0].A {
			way += n.FedBy()[0].Ohm
			if got := math.Abs(s.Amps(n.FedBy()[0])); math.Abs(got-s.ChargingA) > 1e-6 {
				t.Errorf("%s: %s carries %.6f A of %.6f A", name, n.FedBy()[0].Name, got, s.ChargingA)
			}
		}
		if way < 0.007 { // 4 m of 10 mm² alone are 6.9 mΩ
			t.Fatalf("the way is of %g Ω", way)
		}
		posts := s.NodeV[c.Positive().Index]
		want := 14.4 - circuit.ChargerOhm*s.ChargingA
		if k.lost {
			want -= way * s.ChargingA
		}
		switch {
		case k.limited:
			if math.Abs(s.ChargingA-60) > 1e-9 || posts > 12.9 {
				t.Errorf("%s: %.6f A, posts at %.4f V", name, s.ChargingA, posts)
			}
		case math.Abs(posts-want) > 1e-6:
			t.Errorf("%s: posts at %.6f V, by hand %.6f V", name, posts, want)
		}
	}
}

// TestChargingCableOpen: a broken cable leaves the battery alone, and the machine at rest beside it.
func TestChargingCableOpen(t *testing.T) {
	text := strings.NewReplacer("SENSES", "battery", "LOAD", "40 A").Replace(cableDesign)
	c := buildtest.Circuit(t, text)
	d := c.Design
	cable := c.PartOf(&d.Charging).Terminal("B+").Node.FedBy()[0]
	s := solve.Solve(c, d.Situations[0], solve.Options{Changes: []solve.Change{solve.OpenBranch(cable)}})
	if s.Status != solve.Converged || math.Abs(s.ChargingA) > 1e-9 || s.BatteryA < 40 {
		t.Errorf("%s: charging %g A, battery %g A", s.Status, s.ChargingA, s.BatteryA)
	}
}
