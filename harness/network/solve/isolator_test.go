package solve_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
)

const isolatorDesign = `fusewright: 1
title: isolator
vehicle: invented
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 5 mΩ, fed by: start end, wire: {size: 25 mm², length: 150 mm}}
batteries:
  house: {chemistry: AGM, capacity: 100 Ah, resistance: 3 mΩ, fed by: house end, wire: {size: 25 mm², length: 150 mm}}
charging: {regulated: 14.4 V, output: {1000 rpm: 30 A, 3000 rpm: 60 A}, idle: 1000 rpm, cruise: 3000 rpm, hot derating: 0 %, senses: SENSES}
diodes:
  isolator: {type: diode isolator 70 A, outputs: 2, fed by: charging, wire: {size: 25 mm², length: 600 mm}}
fuses:
  start end: {type: marine strip, rating: 100 A, fed by: isolator 1, wire: {size: 25 mm², length: 1 m}}
  house end: {type: marine strip, rating: 100 A, fed by: isolator 2, wire: {size: 25 mm², length: 2 m}}
loads:
  start heater: {current: 20 A, rated at: 14.4 V, behaves: constant power, fed by: battery, wire: {size: 16 mm², length: 1 m}, returns to: battery negative, return wire: {size: 16 mm², length: 1 m}}
  house heater: {current: LOAD, rated at: 14.4 V, behaves: constant power, fed by: house, wire: {size: 16 mm², length: 1 m}, returns to: house negative, return wire: {size: 16 mm², length: 1 m}}
situations: {driving: {engine: cruise, on: all}, stopped: {on: [start heater]}}
`

// TestIsolator by hand: a diode of the isolator loses 0.6 V + I · 0.4 V / 70 A; a regulator that senses
// the first battery holds 14.4 V there less 1 mΩ of slope and stands by so much higher at its stud, one that senses the machine
// leaves both batteries with 14.4 V less the diode and the cable. At its limit of 60 A neither holds, and the house battery gives the rest.
func TestIsolator(t *testing.T) {
	for _, k := range []struct {
		senses, load string
		limited      bool
	}{{"battery", "15 A", false}, {"machine", "15 A", false}, {"battery", "80 A", true}, {"machine", "80 A", true}} {
		c := buildtest.Circuit(t, strings.NewReplacer("SENSES", k.senses, "LOAD", k.load).Replace(isolatorDesign))
		s := solve.Solve(c, c.Design.Situations[0], solve.Options{})
		name := k.senses + ", " + k.load
		if s.Status != solve.Converged || s.Limited != k.limited {
			t.Errorf("%s: %s, limited %v", name, s.Status, s.Limited)
			continue
		}
		stud, postV := s.NodeV[c.Stud().Index], s.NodeV[c.Positive().Index]
		lost := 0.0 // from the stud to the first battery
		for n := c.Positive(); n != c.Stud(); n = n.FedBy()[0].A {
			b := n.FedBy()[0]
			lost += s.Amps(b) * b.Ohm
			if b.Diode != nil {
				lost += 0.6
				if want := 0.6 + s.Amps(b)*0.4/70; math.Abs(s.Volts(b)-want) > 1e-6 { // and what it leaks
					t.Errorf("%s: the diode loses %.4f V, by hand %.4f V", name, s.Volts(b), want)
				}
			}
		}
		if math.Abs(stud-postV-lost) > 1e-6 {
			t.Errorf("%s: stud %.6f V, posts %.6f V, by hand %.6f V lost", name, stud, postV, lost)
		}
		at := stud
		if k.senses == "battery" {
			at = postV
		}
		if want := 14.4 - 0.001*s.ChargingA; !k.limited && math.Abs(at-want) > 1e-4 {
			t.Errorf("%s: held at %.5f V, by hand %.5f V", name, at, want)
		}
		if k.limited && math.Abs(s.ChargingA-60) > 1e-9 {
			t.Errorf("%s: charging with %.3f A of 60 A", name, s.ChargingA)
		}
	}
}

// TestIsolatorAtRest: with the engine stopped neither battery gives anything into the other or the machine but
// what the diodes leak, 0.1 mA at 100 V and as much less at 12.8 V.
func TestIsolatorAtRest(t *testing.T) {
	c := buildtest.Circuit(t, strings.NewReplacer("SENSES", "battery", "LOAD", "15 A").Replace(isolatorDesign))
	s := solve.Solve(c, c.Design.Situations[1], solve.Options{})
	for _, b := range c.PartOf(c.Design.Diodes[0]).Branches {
		if a := s.BranchA[b.Index]; s.Status != solve.Converged || math.Abs(a) > 12.8*1e-6 {
			t.Errorf("%s carries %g A at rest", b.Name, a)
		}
	}
	if s.BatteryA < 20 {
		t.Errorf("the start battery gives %g A, its heater takes 20 A of 14.4 V and more of less", s.BatteryA)
	}
}

// TestSecondAlternator gives at its own stud what its curve gives at the engine speed, less a quarter when hot, and
// nothing with the engine stopped: 20 A of 60 A at 1000 rpm are 15 A.
func TestSecondAlternator(t *testing.T) {
	text := strings.NewReplacer("  house: {chemistry: AGM, capacity: 100 Ah, resistance: 3 mΩ, fed by: house end", "  house: {chemistry: AGM, capacity: 100 Ah, resistance: 3 mΩ, fed by: port end",
		"  house end:", "  port end: {type: marine strip, rating: 100 A, fed by: port, wire: {size: 25 mm², length: 2 m}}\n  house end:", "SENSES", "battery", "LOAD", "90 A",
		"loads:", "chargers:\n  port: {type: alternator 60 A, output by speed: {1000 rpm: 20 A, 3000 rpm: 60 A}}\nloads:").Replace(isolatorDesign)
	text += "  idling: {engine: idle, on: [house heater]}\n  waiting: {on: [house heater]}\n"
	text = strings.Replace(text, "situations: {driving: {engine: cruise, on: all}, stopped: {on: [start heater]}}", "situations:\n  driving: {engine: cruise, on: all}", 1)
	c := buildtest.Circuit(t, text)
	for i, want := range []float64{45, 15, 0} {
		for _, cold := range []bool{false, true} {
			s := solve.Solve(c, c.Design.Situations[i], solve.Options{ColdCharging: cold})
			most := want
			if cold {
				most /= 0.75
			}
			if a := s.Given(c.PartOf(c.Design.Chargers[0]).Output()); s.Status != solve.Converged || math.Abs(a-most) > 1e-6 {
				t.Errorf("%s, cold %v: gives %.6f A, by hand %g A", c.Design.Situations[i].Name, cold, a, most)
			}
		}
	}
}

// A charging system that nothing is fed by stays at the posts.
func TestNoStud(t *testing.T) {
	c := buildtest.Circuit(t, strings.NewReplacer("SENSES", "battery", "LOAD", "40 A").Replace(cableDesign))
	if c.Stud() != nil || c.OfCharger(c.PartOf(&c.Design.Charging).Terminal("B+").Node) {
		t.Error("a cable that the battery feeds makes a stud")
	}
}
