package solve_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// A battery of 12.6 V behind 0.01 Ω, a silicon diode of 0.65 V and 0.25 V / 3 A = 0.08333 Ω,
// leak 5 µA at 100 V, and a heater of 12 W at 12 V, 12 Ω.
func TestDiodeByHand(t *testing.T) {
	tests := []struct {
		name     string
		reversed bool
		amps     float64
	}{
		// i = (12.6 - 0.65 + 0.65 · 0.08333 · 5e-8) / (0.01 + 0.08333 + 12) = 0.988151 A
		{"forward", false, 11.95 / (0.01 + 0.25/3 + 12)},
		// the leak: 12.6 / (100 / 5e-6 + 12) = 0.63 µA
		{"reversed", true, 12.6 / (100/5e-6 + 12.01)},
	}
	for _, tt := range tests {
		b := solvetest.New()
		plus, out := b.Node("+"), b.Node("out")
		b.Battery(plus, 0.01)
		d := b.Diode("D", plus, out, false, tt.reversed)
		load := b.Load("E", out, b.Ground(), design.Resistor, 12, 12)
		s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: 12.6, BatteryOhm: 0.01})
		converged(t, s)
		near(t, tt.name, s.Amps(load), tt.amps, 1e-6*tt.amps)
		near(t, tt.name+", through the diode", s.Amps(d), tt.amps, 1e-6*tt.amps)
		if s.LoadOn[load.Index] == tt.reversed {
			t.Errorf("%s: on %v", tt.name, s.LoadOn[load.Index])
		}
	}
}

// Two feeds of one lamp: with one dead, nothing but the leak goes back into it, and a load of
// constant power behind a diode that blocks is off, not a collapse.
func TestDiodesKeepFeedsApart(t *testing.T) {
	b := solvetest.New()
	plus, live, dead, join := b.Node("+"), b.Node("live"), b.Node("dead"), b.Node("join")
	b.Battery(plus, 0.01)
	b.Wire("W1", plus, live, 1, 1)
	k := b.Branch(circuit.ContactBranch, "S", plus, dead, 0.01)
	k.Closer = &circuit.Closer{Key: design.WhenRunning}
	b.Diode("D1", live, join, false, false)
	d2 := b.Diode("D2", dead, join, false, false)
	lamp := b.Load("E1", join, b.Ground(), design.ConstantPower, 20, 12)
	other := b.Load("E2", dead, b.Ground(), design.ConstantPower, 1, 12)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: 12.6, BatteryOhm: 0.01})
	converged(t, s)
	if !s.LoadOn[lamp.Index] || s.LoadOn[other.Index] {
		t.Errorf("lamp %v, the other %v", s.LoadOn[lamp.Index], s.LoadOn[other.Index])
	}
	if a := s.Amps(d2); a > 0 || a < -1e-6 {
		t.Errorf("%g A back through the second diode", a)
	}
}
