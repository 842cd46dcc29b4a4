package bench_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"fusewright/harness/workshop/bench"
)

// Every position of a switch is tried: what it joins, and what it must not.
func TestSwitchesOfSeveralPositions(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/rules/ok/positions.yaml")
	if err != nil {
		t.Fatal(err)
	}
	test := bench.Make(read(t, string(text)))
	for _, c := range []struct{ ref, at, want string }{
		{"S1", "off", "all open"},
		{"S1", "navigation", "in joined to bow and stern"},
		{"S1", "anchor", "in joined to stern, open to bow"},
		{"S2", "manual", "in joined to manual, open to automatic"},
	} {
		if got := find(t, test, bench.Switches, c.ref, c.at).Text; got != c.want {
			t.Errorf("%s at %s: %q, want %q", c.ref, c.at, got, c.want)
		}
	}
}

// A handle that springs back is read held and let go.
func TestMomentaryPositions(t *testing.T) {
	test := bench.Make(read(t, strings.NewReplacer("push: {type: push button 3 A, at: bay, fed by: f}",
		"push: {type: rocker 16 A, momentary: yes, at: bay, fed by: f, positions: {up: up, off: none, down: down}}", "by: push,", "by: push up,").Replace(timed)))
	if got, want := find(t, test, bench.Switches, "S1", "up").Text, "in joined to up, open to down; all open when let go"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// timed has relays that wait or latch, and two chargers.
const timed = `
fusewright: 1
title: timed
vehicle: invented
revision: A
system: 12 V
practice: motorcycle
places: {bay: {ambient: 30 °C}}
battery: {chemistry: AGM, capacity: 12 Ah, at: bay}
batteries:
  house: {chemistry: AGM, capacity: 60 Ah, at: bay, fed by: [booster end, roof end], returns to: battery negative}
wire: {insulation: ISO 6722 thin wall class B, size: 6 mm²}
fuses:
  f: {type: blade C, at: bay, rating: 10 A, fed by: battery}
  start end: {type: marine strip, at: bay, rating: 50 A, fed by: battery}
  booster end: {type: marine strip, at: bay, rating: 35 A, fed by: booster}
  roof end: {type: marine strip, at: bay, rating: 35 A, fed by: roof}
chargers:
  booster: {type: DC-DC charger 20 A, at: bay, fed by: start end, returns to: house negative}
  roof: {type: PWM controller 10 A, at: bay, panel: 80 W, returns to: house negative}
switches: {push: {type: push button 3 A, at: bay, fed by: f}}
relays:
  late: {form: mini make, at: bay, on delay: 4 s, fed by: f, coil: {fed by: push, returns to: battery negative, suppressed by: diode}}
  long: {form: mini make, at: bay, off delay: 20 s, fed by: f, coil: {fed by: push, returns to: battery negative, suppressed by: diode}}
  toggle: {form: impulse relay, at: bay, fed by: f, coil: {fed by: push, returns to: battery negative, suppressed by: diode}}
loads:
  a: {power: 5 W, behaves: resistor, at: bay, fed by: late, returns to: battery negative}
  b: {power: 5 W, behaves: resistor, at: bay, fed by: long, returns to: battery negative}
  c: {power: 5 W, behaves: resistor, at: bay, fed by: toggle, returns to: battery negative}
situations: {parked: {key: off}}
`

// Delays are read within a quarter, what latches is pulsed, a charger is read by its
// input: it starts at 13.3 V and stops at 12.8 V, 1.5 % either way.
func TestTimedRelaysAndChargers(t *testing.T) {
	test := bench.Make(read(t, timed))
	for _, c := range []struct {
		kind               bench.Kind
		ref, word          string
		nominal, low, high float64
	}{
		{bench.Timed, "K1", "to contact closed", 4, 3, 5},
		{bench.Timed, "K2", "to contact open", 20, 15, 25},
		{bench.Chargers, "T1", "starts", 13.3, 13.1005, 13.4995},
		{bench.Chargers, "T1", "takes no more", 12.8, 12.608, 12.992},
		{bench.Chargers, "T1", "held", 14.4, 14.184, 14.616},
		{bench.Chargers, "T2", "panel covered", 0.005, math.NaN(), 0.01002},
	} {
		got := find(t, test, c.kind, c.ref, c.word)
		near(t, c.word, got.Nominal, c.nominal)
		near(t, c.word+" at most", got.High, c.high)
		if !math.IsNaN(c.low) {
			near(t, c.word+" at least", got.Low, c.low)
		}
	}
	if text := find(t, test, bench.Timed, "K3", "pulses").Text; !strings.Contains(text, "turns over at each") {
		t.Errorf("impulse relay: %q", text)
	}
}

// Of loads on one ground point the first is read through, the others are looked at; one
// reading of isolation is for everything behind a first fuse, the other fuses in.
func TestReadOnce(t *testing.T) {
	src := strings.NewReplacer("fuses:\n", "fuses:\n  own: {type: blade C, rating: 5 A, fed by: f, wire: {length: 1 m}}\n",
		"loads:\n", "loads:\n  second: {power: 6 W, polarised: yes, fed by: own, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}\n"+
			"  third: {power: 6 W, polarised: yes, fed by: own, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}\n").Replace(tiny)
	test := bench.Make(read(t, src))
	read, seen, isolated := 0, 0, 0
	for _, s := range test.Sections {
		for _, c := range s.Checks() {
			switch {
			case s.Kind == bench.Polarity && c.Text == bench.ByEye:
				seen++
			case s.Kind == bench.Polarity:
				read++
			case s.Kind == bench.Isolation && c.Ref != "G1":
				isolated++
			}
		}
	}
	if read != 1 || seen != 1 || isolated != 1 {
		t.Errorf("%d polarities read and %d looked at, %d stretches isolated; want 1, 1 and 1", read, seen, isolated)
	}
}

// A pass whose readings are all in another is left out, and named.
func TestPassThatTellsNothing(t *testing.T) {
	src := strings.Replace(tiny, "  parked:", "  again: {key: on, on: [heater]}\n  parked:", 1)
	test := bench.Make(read(t, src))
	for _, s := range test.Sections {
		if s.Situation != nil && s.Situation.Name == "again" {
			t.Error("the same is read again")
		}
	}
	if !strings.Contains(strings.Join(test.Missing, " "), "is in another: again.") {
		t.Errorf("nothing said of it: %q", test.Missing)
	}
}
