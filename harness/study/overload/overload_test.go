package overload_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/overload"
)

// base is a motor and a lamp behind one trunk; places are not given, so wires lie
// in 30 °C.
const base = `fusewright: 1
title: test
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 4 mΩ}
fuses:
  main: {type: blade C, rating: 30 A, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
splices:
  joint: {fed by: main, wire: {size: 1.5 mm², length: 1 m}}
loads:
  fan: {current: 8 A, behaves: motor, inrush: {peak: 4, time: 100 ms}, own switch: yes, fed by: joint, wire: {size: 4 mm², length: 1 m}, returns to: battery negative, return wire: {size: 4 mm², length: 1 m}}
  lamp: {current: 5 A, own switch: yes, fed by: joint, wire: {size: 4 mm², length: 1 m}, returns to: battery negative, return wire: {size: 4 mm², length: 1 m}}
situations:
  fan: {on: [fan]}
  lamp: {on: [lamp]}
`

func study(t *testing.T, src string) (*circuit.Circuit, *overload.Study) {
	t.Helper()
	c := buildtest.Circuit(t, src)
	d := c.Design
	var sols []*solve.Solution
	for _, s := range d.Situations {
		sols = append(sols, solve.Solve(c, s, solve.Options{}))
	}
	return c, overload.Compute(c, sols, fault.Compute(c))
}

// The blocked fan draws 4 × 8 A; of the lamp nothing runs with it. 32 A is 1.07
// times the fuse's rating: it may never open, and 1.5 mm² in 30 °C, which may carry
// some 20 A to its class less the margin, does not stand it for good. Of 4 mm² none is hurt.
func TestBlockedMotor(t *testing.T) {
	c, s := study(t, base)
	trunk := c.Wires[1]
	o := s.Worst(trunk)
	if o == nil || o.Blocked == nil || o.Blocked.Part.Name != "fan" {
		t.Fatalf("%s: %+v", trunk.Number, o)
	}
	if math.Abs(o.Amps-32) > 0.4 || !math.IsInf(o.OpensS, 1) || !o.Hurts() {
		t.Errorf("%s: %.1f A, opens in %g s, stands %g s", trunk.Number, o.Amps, o.OpensS, o.StandsS)
	}
	for _, w := range c.Wires {
		if w != trunk && s.Worst(w).Hurts() {
			t.Errorf("%s is hurt: %+v", w.Number, s.Worst(w))
		}
	}
}

// With 10 A the fuse has opened within 5 s (ISO 8820-3: at twice its rating, here
// 3.2 times), before 1 mm² is hurt.
func TestFuseEndsIt(t *testing.T) {
	c, s := study(t, strings.NewReplacer("rating: 30 A", "rating: 10 A", "size: 1.5 mm²", "size: 1 mm²").Replace(base))
	o := s.Worst(c.Wires[1])
	if o == nil || o.Hurts() || o.OpensS > 5 || o.Device == nil || o.StandsS < 5 {
		t.Errorf("%+v", o)
	}
}

// Nothing tells that the lamps are on together, but nothing hinders it: 2 × 20 A
// through 4 mm² behind 30 A, of which each situation has 20 A.
func TestAllAtOnce(t *testing.T) {
	src := strings.NewReplacer("8 A, behaves: motor, inrush: {peak: 4, time: 100 ms}", "20 A", "current: 5 A", "current: 20 A",
		"size: 1.5 mm²", "size: 2.5 mm²").Replace(base)
	c, s := study(t, src)
	o := s.Worst(c.Wires[1])
	if o == nil || o.Blocked != nil || math.Abs(o.Amps-40) > 1e-9 || !o.Hurts() {
		t.Errorf("%+v", o)
	}
	if o := s.Worst(c.Wires[2]); o != nil {
		t.Errorf("the fan's own wire carries what it does in use: %+v", o)
	}
}

// One switch for either lamp keeps them apart: 20 A flow through the trunk in use, and no more at once. With a
// 2 A lamp beside it that is 22 A.
func TestPositionsKeepApart(t *testing.T) {
	src := strings.NewReplacer("8 A, behaves: motor, inrush: {peak: 4, time: 100 ms}, own switch: yes, fed by: joint", "20 A, fed by: either one",
		"current: 5 A, own switch: yes, fed by: joint", "current: 20 A, fed by: either other",
		"loads:\n", "switches:\n  either: {rating: 30 A, fed by: joint, wire: {size: 4 mm², length: 1 m}, positions: [one, off, other]}\nloads:\n",
		"size: 1.5 mm²", "size: 2.5 mm²").Replace(base)
	c, s := study(t, src)
	if o := s.Worst(c.Wires[1]); o != nil {
		t.Errorf("%+v", o)
	}
	c, s = study(t, strings.NewReplacer("size: 2.5 mm²", "size: 1 mm²", "loads:\n",
		"loads:\n  dial: {current: 2 A, own switch: yes, fed by: joint, wire: {size: 4 mm², length: 1 m}, returns to: battery negative, return wire: {size: 4 mm², length: 1 m}}\n").Replace(src))
	if o := s.Worst(c.Wires[1]); o == nil || math.Abs(o.Amps-22) > 1e-9 {
		t.Errorf("%+v", o)
	}
}

// What one situation has on is use, also where a low voltage makes it less than the
// loads' rated currents.
func TestUseIsNoOverload(t *testing.T) {
	src := strings.NewReplacer("8 A, behaves: motor, inrush: {peak: 4, time: 100 ms}", "20 A", "current: 5 A", "current: 20 A",
		"size: 1.5 mm²", "size: 2.5 mm²", "fan: {on: [fan]}", "both: {on: [fan, lamp]}").Replace(base)
	c, s := study(t, src)
	if o := s.Worst(c.Wires[1]); o != nil {
		t.Errorf("%+v", o)
	}
}

// Behind 60 A, which no motor here opens, 1.5 mm² of class B comes past its class, 100 °C, from
// 28 A and past its overload limit, 150 °C, from 37 A (its damage curve): 32 A for good take from
// its life, 38.4 A ruin it. The worse of two is told, whichever comes first.
func TestRuins(t *testing.T) {
	wide := strings.NewReplacer("blade C, rating: 30 A", "blade E, rating: 60 A", "behaves: motor, inrush: {peak: 4,", "behaves: motor, inrush: {peak: FAN,",
		"current: 5 A, own", "current: 8 A, behaves: motor, inrush: {peak: LAMP, time: 100 ms}, own").Replace(base)
	for _, c := range []struct {
		fan, lamp string
		amps      float64
		ruins     bool
		blocked   string
	}{
		{"4", "2", 32, false, "fan"},
		{"4.4", "2", 35.2, false, "fan"},
		{"4.8", "2", 38.4, true, "fan"},
		{"4", "4.8", 38.4, true, "lamp"},
		{"4.8", "4", 38.4, true, "fan"},
		{"4", "1.99", 40, true, "lamp"}, // less than a motor draws that stands: five times, as where nothing is said
	} {
		net, s := study(t, strings.NewReplacer("FAN", c.fan, "LAMP", c.lamp).Replace(wide))
		o := s.Worst(net.Wires[1])
		if o == nil || o.Blocked == nil {
			t.Fatalf("%+v: %+v", c, o)
		}
		if !o.Hurts() || o.Device != nil || o.Ruins != c.ruins || o.Blocked.Part.Name != c.blocked || math.Abs(o.Amps-c.amps) > 0.5 {
			t.Errorf("%+v: %+v by %s", c, o, o.Blocked.Part.Name)
		}
	}
}

// 48 A through 30 A: the fuse must end it (ISO 8820-3, from 135 % of the rating), so nothing
// is ruined, however long that takes.
func TestWhatAFuseEndsRuinsNothing(t *testing.T) {
	c, s := study(t, strings.Replace(base, "peak: 4", "peak: 6", 1))
	o := s.Worst(c.Wires[1])
	if o == nil || o.Device == nil || o.Ruins {
		t.Errorf("%+v", o)
	}
}

// Two of 19.2 A would ruin the trunk together for good; each for part of the time, they take
// from its life alone.
func TestTimedLoadsRuinLess(t *testing.T) {
	for on, ruins := range map[string]bool{"": true, "on for: 30 s, every: 10 min, ": false} {
		c, s := study(t, strings.NewReplacer("blade C, rating: 30 A", "blade E, rating: 60 A", "current: 8 A, behaves: motor, inrush: {peak: 4, time: 100 ms}, ",
			"current: 19.2 A, "+on, "current: 5 A, ", "current: 19.2 A, "+on).Replace(base))
		if o := s.Worst(c.Wires[1]); o == nil || o.Blocked != nil || o.Ruins != ruins {
			t.Errorf("%q: %+v", on, o)
		}
	}
}
