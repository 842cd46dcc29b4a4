package solve_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// A chain of relays, each feeding the coil of the next, pulls in to the last.
func TestRelayChainSettles(t *testing.T) {
	b := solvetest.New()
	plus := b.Node("+")
	b.Battery(plus, 0.01)
	feed := plus
	for range 10 {
		out := b.Node("87")
		b.Relay("K", feed, b.Ground(), plus, out, false)
		feed = out
	}
	load := b.Load("E1", feed, b.Ground(), design.Resistor, 24, 12)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{})
	converged(t, s)
	if !s.LoadOn[load.Index] {
		t.Error("the last relay did not pull in")
	}
}

// A relay whose break contact feeds its own coil is a buzzer.
func TestBuzzerChatters(t *testing.T) {
	b := solvetest.New()
	plus, coil := b.Node("+"), b.Node("86")
	b.Battery(plus, 0.01)
	k, _ := b.Relay("K1", coil, b.Ground(), plus, coil, true)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{})
	if s.Status != solve.Chattering || s.At != k.A || s.Why == "" {
		t.Errorf("%q at %v: %s", s.Status, s.At, s.Why)
	}
}

// Two relays that lock each other out race; whichever wins, it is settled.
func TestInterlockSettles(t *testing.T) {
	b := solvetest.New()
	plus, c1, c2 := b.Node("+"), b.Node("86 of K1"), b.Node("86 of K2")
	b.Battery(plus, 0.01)
	// K1's break contact feeds K2's coil and the other way round.
	k1, fromK1 := b.Relay("K1", c1, b.Ground(), plus, c2, true)
	k2, _ := b.Relay("K2", c2, b.Ground(), plus, c1, true)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{})
	converged(t, s)
	if (s.Volts(k1) > 8) == (s.Volts(k2) > 8) {
		t.Errorf("coils at %g and %g V", s.Volts(k1), s.Volts(k2))
	}
	_ = fromK1
}

// Between release and pull-in voltage a coil at rest stays at rest, and one
// that pulled in before its load sagged the feed stays pulled in.
func TestHysteresis(t *testing.T) {
	for _, c := range []struct {
		name      string
		seriesOhm float64
		on        bool
	}{{"coil gets 6.35 V", 90, false}, {"coil gets 8.47 V", 45, true}} {
		b := solvetest.New()
		plus, coil, out := b.Node("+"), b.Node("86"), b.Node("87")
		b.Battery(plus, 1e-6)
		b.Resistor("R", plus, coil, c.seriesOhm)
		b.Relay("K1", coil, b.Ground(), plus, out, false)
		load := b.Load("E1", out, b.Ground(), design.Resistor, 24, 12)
		s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: 12.7})
		converged(t, s)
		if s.LoadOn[load.Index] != c.on {
			t.Errorf("%s: load on %v", c.name, !c.on)
		}
	}
	b := solvetest.New()
	plus, out := b.Node("+"), b.Node("87")
	b.Battery(plus, 0.5)
	k, _ := b.Relay("K1", plus, b.Ground(), plus, out, false)
	b.Load("E1", out, b.Ground(), design.Resistor, 144, 12) // 1 Ω: the posts sag to 8.4 V
	b.Load("E2", out, b.Ground(), design.Resistor, 72, 12)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: 12.7})
	converged(t, s)
	if v := s.Volts(k); v > 8 || v < 1.2 || s.BatteryA < 5 {
		t.Errorf("coil at %g V, battery %g A", v, s.BatteryA)
	}
}

// The load's sag releases the coil, which takes the load off, which lets it
// pull in again.
func TestSaggingRelayChatters(t *testing.T) {
	b := solvetest.New()
	plus, out := b.Node("+"), b.Node("87")
	b.Battery(plus, 0.5)
	b.Relay("K1", plus, b.Ground(), plus, out, false)
	b.Load("E1", out, b.Ground(), design.Resistor, 5000, 12)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: 12.7})
	if s.Status != solve.Chattering {
		t.Errorf("status %q", s.Status)
	}
}
