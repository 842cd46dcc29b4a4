package together_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/study/together"
	"fusewright/library"
)

// Two lamps behind a relay that one switch closes; a lamp in the cabin behind the deck
// switch, a fan with a switch of its own behind that; a map without any switch, and a pump
// that rising water switches.
const byHands = `fusewright: 1
title: by hand
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 5 mΩ}
charging: {regulated: 14 V, output: {1000 rpm: 12.8 A, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
vehicle loads: {machine: 112 W}
wire: {insulation: tinned marine 105 °C AWG, size: 8 AWG}
taps: {keyed feed: {hot: key, fuse: 30 A, supervised: no}}
fuses: {f: {type: blade C, rating: 30 A, fed by: keyed feed, wire: {length: 20 mm}}}
switches:
  fog lamps: {rating: 20 A, fed by: f, wire: {length: 20 mm}}
  deck: {rating: 20 A, fed by: f, wire: {length: 20 mm}}
  float: {type: float switch 15 A, fed by: f, wire: {length: 20 mm}}
relays:
  fog: {form: mini make, fed by: f, wire: {length: 20 mm}, coil: {fed by: fog lamps, returns to: battery negative, suppressed by: diode, wire: {length: 20 mm}, return wire: {length: 20 mm}}}
loads:
  left fog: {power: 28 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: fog, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  map: {power: 14 W, rated at: 14 V, behaves: constant power, fed by: f, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  right fog: {power: 28 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: fog, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  fan: {power: 42 W, rated at: 14 V, behaves: constant power, symbol: motor, priority: 5, own switch: yes, fed by: deck, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  cabin: {power: 14 W, rated at: 14 V, behaves: constant power, symbol: heater, fed by: deck, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  pump: {power: 56 W, rated at: 14 V, behaves: constant power, duty: 5 %, fed by: float, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
situations:
  all of it: {engine: idle, on: all}
  lamps: {engine: idle, on: [left fog, right fog, map]}
  dark: {engine: idle, on: [map]}
`

// By hand at idle: 12.8 A less 8 A of the machine, 1 A of the map and 0.2 A of the pump
// leave 3.6 A. The lamps with the coil of their relay take more; the cabin's 1 A fit, and
// the fan's 3 A do not without it. With all on 4.56 A are missing: fan and cabin are not
// enough, and the lamps, which no priority gives up, stay on.
func TestByHands(t *testing.T) {
	p, b := plan(t, []byte(byHands))
	coil := 14 / library.Default().RelayForm("mini make").CoilOhm
	if len(p.Always) != 2 || p.Always[0].Name != "map" || p.Always[1].Name != "pump" || math.Abs(p.AlwaysA-1.2) > 0.01 || p.Coils {
		t.Errorf("always on: %d, %.3f A", len(p.Always), p.AlwaysA)
	}
	if got, want := names(p.Items), []string{"fog lamps (left fog, right fog)", "cabin", "fan"}; !slices.Equal(got, want) {
		t.Fatalf("items %q, want %q", got, want)
	}
	for i, want := range []float64{4 + coil, 1, 3} {
		if got := p.Items[i].CurrentA; math.Abs(got-want) > 0.03*want { // a tap and a fuse lose 0.3 V
			t.Errorf("%s: %.3f A, want %.3f A", p.Items[i].Name, got, want)
		}
	}
	if p.Items[1].Rank != 5 || !p.Items[1].Stated {
		t.Errorf("the cabin ranks %d", p.Items[1].Rank)
	}
	for _, c := range p.Choices {
		switch {
		case c.EngineRPM > 1000:
			if len(c.Sets) != 1 || c.Sets[0].Len() != 3 {
				t.Errorf("%s: %b", c.Name, c.Sets)
			}
		case len(c.Sets) != 1 || !slices.Equal(names(p.Members(c.Sets[0])), []string{"cabin"}):
			t.Errorf("%s: %b", c.Name, c.Sets)
		}
	}
	all, lamps := p.Choices[2], p.Choices[3]
	if got, want := names(all.SwitchOff), []string{"fan", "cabin"}; !slices.Equal(got, want) {
		t.Errorf("off %q, want %q", got, want)
	}
	if got := names(lamps.On); !slices.Equal(got, []string{"fog lamps (left fog, right fog)"}) {
		t.Errorf("on %q", got)
	}
	// What a choice takes is what the budget finds in it: the coil with its lamps alone.
	for i, line := range b.Lines[1:] {
		took := []float64{p.Items[0].CurrentA, 0}[i] + p.AlwaysA - 0.2
		if math.Abs(line.AccessoryA-took) > 0.05 {
			t.Errorf("%s: budget %.3f A, by hands %.3f A", line.Situation.Name, line.AccessoryA, took)
		}
	}
}

// The coil of a relay counts with the item of the fewest hands that close it: that of the
// lamps alone, not of the fan that has a switch of its own behind the same relay.
func TestCoilOfTheFewestHands(t *testing.T) {
	src := strings.Replace(byHands, "  left fog: ", "  fog fan: {power: 14 W, rated at: 14 V, behaves: constant power, own switch: yes, fed by: fog, "+
		"wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}\n  left fog: ", 1)
	p, _ := plan(t, []byte(src))
	coil := 14 / library.Default().RelayForm("mini make").CoilOhm
	for _, want := range []struct {
		name  string
		loads int
		amps  float64
	}{{"fog lamps (left fog, right fog)", 2, 4 + coil}, {"fog fan", 1, 1}} {
		i := slices.IndexFunc(p.Items, func(x *together.Item) bool { return x.Name == want.name })
		if i < 0 || len(p.Items[i].Loads) != want.loads || math.Abs(p.Items[i].CurrentA-want.amps) > 0.04*want.amps { // a tap, a fuse and a relay lose 0.4 V
			t.Errorf("%s: %.3f A, want %.3f A", want.name, p.Items[max(i, 0)].CurrentA, want.amps)
		}
	}
}

// An alarm that wakes by itself and that nothing parts from the battery is not for shedding,
// whatever else is asked for: it counts throughout. With a switch of its own it is one that a
// hand switches, and stays all the same.
func TestAlarmIsNotShed(t *testing.T) {
	src := strings.Replace(byHands, "situations:", `  alarm: {power: 14 W, rated at: 14 V, behaves: constant power, standby: 20 mA, symbol: electronics, stays live: "guards the boat", fed by: battery, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
situations:`, 1)
	for _, own := range []bool{false, true} {
		if own {
			src = strings.Replace(src, "standby: 20 mA,", "standby: 20 mA, own switch: yes,", 1)
		}
		p, _ := plan(t, []byte(src))
		on, shed := false, false
		for _, c := range p.Choices {
			on, shed = on || slices.Contains(names(c.On), "alarm"), shed || slices.Contains(names(c.SwitchOff), "alarm")
		}
		if always := len(p.Always) == 3; shed || on != own || always == own {
			t.Errorf("own switch %t: on %t, shed %t, %d always on", own, on, shed, len(p.Always))
		}
		if !own && math.Abs(p.AlwaysA-2.2) > 0.01 {
			t.Errorf("%.3f A always on, want 1 A more than 1.2 A", p.AlwaysA)
		}
	}
}

// What keeps watch, must burn or pumps a bilge is never shed, whatever priority it has; nor is
// a lamp without one.
func TestGivenUp(t *testing.T) {
	for _, c := range []struct {
		kind     string
		priority int
		want     bool
	}{{"alarm", 9, false}, {"tracker", 0, false}, {"LED navigation lamp", 9, false}, {"anchor lamp 25 W", 9, false}, {"bilge pump", 9, false},
		{"LED light bar", 0, false}, {"LED light bar", 9, true}, {"heated grips", 0, true}, {"fresh water pump", 0, true}} {
		kind := library.Default().Load(c.kind)
		if got := together.GivenUp(&design.Load{Type: kind, Sign: design.Sign(kind.Sign), Priority: c.priority}); got != c.want {
			t.Errorf("%s, priority %d: given up %t", c.kind, c.priority, got)
		}
	}
}
