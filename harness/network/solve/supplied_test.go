package solve_test

import (
	"math"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
)

const suppliedDesign = `fusewright: 1
title: t
system: 24 V
practice: camper
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 5 mΩ, at: bay}
charging: {regulated: 28.4 V, output: {900 rpm: 50 A, 5000 rpm: 80 A}, idle: 900 rpm, cruise: 2500 rpm}
places: {bay: {ambient: 40 °C}}
wire: {size: 16 mm²}
chargers: {dropper: {type: 24 V to 12 V converter 10 A, at: bay, fed by: battery}}
loads:
  heater: {resistance: 4 Ω, at: bay, fed by: dropper, returns to: battery negative}
  great: {resistance: 1 Ω, at: bay, fed by: dropper, returns to: battery negative, own switch: yes}
situations:
  parked: {key: off}
  all on: {key: off, on: [great]}
`

func supplied(t *testing.T) (*circuit.Circuit, *circuit.Part) {
	t.Helper()
	c := buildtest.Circuit(t, suppliedDesign)
	for _, p := range c.Parts {
		if p.Output() != nil {
			return c, p
		}
	}
	t.Fatal("no converter")
	return nil, nil
}

// TestConverter by hand: 4 Ω at 13.8 V behind 5 mΩ of regulation take 3.45 A; the input takes that power over 0.87. With
// 0.8 Ω it is at its limit of 10 A, and its output has 8 V and what the wires lose.
func TestConverter(t *testing.T) {
	c, p := supplied(t)
	for i, want := range []struct{ amps, volts float64 }{{3.45, 13.78}, {10, 8.0}} {
		s := solve.Solve(c, c.Design.Situations[i], solve.Options{})
		out, in := p.Output(), p.Converts()
		if s.Status != solve.Converged {
			t.Fatal(s.Status, s.Why)
		}
		if got := -s.Amps(out); math.Abs(got-want.amps) > 0.01 || math.Abs(s.Volts(out)-want.volts) > 0.05 {
			t.Errorf("gives %.4f A at %.4f V, want %v", got, s.Volts(out), want)
		}
		if takes, gives := s.Amps(in)*s.Volts(in), -s.Amps(out)*s.Volts(out); math.Abs(takes-gives/0.87) > 1e-6 {
			t.Errorf("takes %.6f W and gives %.6f W", takes, gives)
		}
		if sum := s.SourceA(named(c, "heater")) + s.SourceA(named(c, "great")); math.Abs(sum-s.Amps(in)) > 0.01 {
			t.Errorf("its loads are %.4f A to the battery, its input takes %.4f A", sum, s.Amps(in))
		}
	}
}

func named(c *circuit.Circuit, load string) *circuit.Branch {
	for _, b := range c.Branches {
		if b.Load != nil && b.Part.Name == load {
			return b
		}
	}
	return nil
}

// TestConverterCutsOut: it starts at 21 V, and once it runs holds on down to 20 V.
func TestConverterCutsOut(t *testing.T) {
	c, p := supplied(t)
	at := func(v float64, after *solve.Solution) *solve.Solution {
		return solve.Solve(c, c.Design.Situations[0], solve.Options{BatteryV: v, BatteryOhm: 1e-6, After: after})
	}
	runs := at(25, nil)
	for _, want := range []struct {
		volts float64
		after *solve.Solution
		gives bool
	}{{20.9, nil, false}, {21.1, nil, true}, {20.9, runs, true}, {20.1, runs, true}, {19.9, runs, false}} {
		s := at(want.volts, want.after)
		if got := -s.Amps(p.Output()) > 3; s.Status != solve.Converged || got != want.gives {
			t.Errorf("at %g V, run before %t: %s, gives %.3f A", want.volts, want.after != nil, s.Status, -s.Amps(p.Output()))
		}
	}
}
