package circuit_test

import (
	"math"
	"slices"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/library"
)

// Two lamps of 6 V, and a fan behind a resistor. By hand: each lamp counts as 6² / 10 = 3.6 Ω, so
// that 12 V drive 12 / 7.2 = 1.667 A; the fan as 12² / 7.2 = 20 Ω and the resistor as 10 Ω, 0.4 A,
// but the fan takes its 0.6 A whatever its voltage. Held fast at five times its current it
// is 4 Ω: 12 / 14 = 0.857 A.
const seriesText = start + `
fuses: {lamps: {type: blade C, rating: 3 A, at: a, fed by: battery}, fan fuse: {type: blade C, rating: 3 A, at: a, fed by: battery}}
switches: {cold side: {rating: 5 A, at: a, returns to: stud}}
loads:
  left: {power: 10 W, rated at: 6 V, behaves: resistor, at: a, fed by: lamps}
  right: {power: 10 W, rated at: 6 V, behaves: resistor, at: a, in series with: left, returns to: cold side}
  dropper: {resistance: 10 Ω, at: a, fed by: fan fuse}
  fan: {power: 7.2 W, behaves: motor, at: a, in series with: dropper, returns to: stud}
`

func TestString(t *testing.T) {
	c := build(t, "t.yaml", seriesText)
	load := func(name string) *circuit.Branch { return named(t, c, name).Branches[0] }
	for name, wantA := range map[string]float64{"left": 12 / 7.2, "right": 12 / 7.2, "dropper": 0.6, "fan": 0.6} {
		if a := c.DrawA(load(name)); math.Abs(a-wantA) > 1e-9 {
			t.Errorf("%s draws %g A, want %g A", name, a, wantA)
		}
	}
	if a := c.StalledA(load("fan")); math.Abs(a-12.0/14) > 1e-9 {
		t.Errorf("held fast the fan lets %g A through", a)
	}
	below := c.BelowBranch(named(t, c, "lamps").Branches[0])
	if got := below.Names(); len(below.Loads) != 1 || !slices.Equal(got, []string{"left", "right"}) {
		t.Errorf("behind the fuse: %d loads, %v; want one string of left and right", len(below.Loads), got)
	}
	for _, name := range []string{"left", "right"} {
		p := named(t, c, name)
		feed, back := c.MainFeed(p.Terminal("+").Node), c.MainReturn(p.Terminal("-").Node, c.Negative())
		if !feed.Whole || !back.Whole {
			t.Errorf("%s: a way to the battery %v, a way back %v", name, feed.Whole, back.Whole)
		}
		if s := c.SwitchesFor(load(name)); len(s) != 1 || s[0].Name != "cold side" {
			t.Errorf("%s needs %d switches", name, len(s))
		}
	}
	w := named(t, c, "right").Terminal("+").Wires[0]
	if w.From != named(t, c, "left").Terminal("-") || !w.Branch.BehindLoad() || w.Role != circuit.FeedWire {
		t.Errorf("the wire between is %s", w.Text())
	}
}

// Solved: 12.6 V behind 10 mΩ over two lamps of 3.6 Ω and what joins them share alike, with one
// current; wires lose what is left.
func TestStringSolved(t *testing.T) {
	c := build(t, "t.yaml", seriesText)
	on := &design.Situation{Name: "on", Key: design.KeyOn, On: c.Design.Loads}
	s := solve.Solve(c, on, solve.Options{BatteryV: 12.6, BatteryOhm: 0.01})
	if s.Status != solve.Converged {
		t.Fatal(s.Trouble())
	}
	left, right := named(t, c, "left").Branches[0], named(t, c, "right").Branches[0]
	if a, b := s.Amps(left), s.Amps(right); math.Abs(a-b) > 1e-9 || math.Abs(a-12.6/7.2) > 0.05 {
		t.Errorf("%g A and %g A", a, b)
	}
	if a, b := s.LoadV(left), s.LoadV(right); math.Abs(a-b) > 1e-9 {
		t.Errorf("%g V and %g V", a, b)
	}
	lost := s.PostsV(left) - 2*s.LoadV(left)
	if got := s.LostV(left); math.Abs(got-lost) > 1e-9 || got <= 0 || got > 0.3 || math.Abs(s.LostV(right)-lost) > 1e-9 {
		t.Errorf("lost on the way: %g V, want %g V", got, lost)
	}
	fan, dropper := named(t, c, "fan").Branches[0], named(t, c, "dropper").Branches[0]
	if a := s.Amps(fan); math.Abs(a-0.6) > 1e-6 || math.Abs(s.Volts(dropper)-6) > 1e-5 {
		t.Errorf("fan: %g A, resistor %g V", a, s.Volts(dropper))
	}
}

// From twice its running current on, the design's start is that of a motor that stands;
// below, a soft start says nothing of it.
func TestStallByHand(t *testing.T) {
	c := &circuit.Circuit{Design: &design.Design{Library: &library.Library{Tolerances: []*library.Tolerance{{Name: "stalled motor", Value: 4}}}}}
	for peak, want := range map[float64]float64{1: 4, 1.99: 4, 2: 2, 3: 3} {
		l := &design.Load{}
		l.Inrush.PeakRatio = peak
		if got := c.StallRatio(l); got != want {
			t.Errorf("a start of %g times: %g, want %g", peak, got, want)
		}
		if l.StartAssumed = true; c.StallRatio(l) != 4 {
			t.Errorf("a start assumed at %g times says nothing of it standing", peak)
		}
	}
}
