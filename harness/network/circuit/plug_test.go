package circuit_test

import (
	"math"
	"testing"

	"fusewright/library"
)

const plugged = `fusewright: 1
title: plugs
vehicle: invented
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  main: {type: blade C, rating: 10 A, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
switches:
  rocker: {type: sealed rocker 20 A, plug: sealed 2.8, fed by: main, wire: {length: 1 m}}
loads:
  lamp: {type: halogen lamp 35 W, plug: sealed 1.5, fed by: [rocker, main], wire: {size: 2 mm², length: 1 m}, returns to: battery negative, return wire: {length: 2 m}}
  horn: {type: horn, plug: open bullet, fed by: [rocker, main], wire: {length: 1 m}, returns to: battery negative, return wire: {length: 2 m}}
  meter: {type: horn, fed by: rocker, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}
  spot: {type: LED auxiliary lamp, fed by: main, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}
  clock: {type: horn, plug: auto, fed by: main, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}
`

func TestPlugs(t *testing.T) {
	c := build(t, "plugs.yaml", plugged)
	for _, want := range []struct{ part, plug string }{
		{"rocker", "sealed 2.8, 4 ways"}, // one in, three out
		{"lamp", "sealed 1.5, 3 ways"},
		{"horn", "open bullet, no housing with 3 ways"},
	} {
		if got := named(t, c, want.part).Plug; got == nil || got.String() != want.plug {
			t.Errorf("%s: plug %v, want %s", want.part, got, want.plug)
		}
	}
	for _, part := range []string{"meter", "clock", "main"} { // left out, not chosen yet, cannot have one
		if got := named(t, c, part).Plug; got != nil {
			t.Errorf("%s has the plug %s", part, got)
		}
	}
}

// The wires at a plug end in its contacts by their size, which replace the
// part's own terminals, and their resistance is that of contact and far end.
func TestPlugContacts(t *testing.T) {
	c, lib := build(t, "plugs.yaml", plugged), library.Default()
	for _, want := range []struct{ part, terminal, from, to string }{
		{"lamp", "+", "pin 2.8 medium", "pin 1.5 large"}, // comes from the switch's plug
		{"lamp", "-", "pin 1.5 medium", ""},
		{"horn", "-", "bullet 4 red", ""},
		{"meter", "+", "pin 2.8 small", "receptacle 6.3 red"},
		{"clock", "-", "receptacle 6.3 red", ""},
		{"spot", "-", "butt splice red", ""}, // its contacts have no housing without a plug
	} {
		w := named(t, c, want.part).Terminal(want.terminal).Wires[0]
		if got := crimpName(w.FromEnd); got != want.from {
			t.Errorf("%s of %s begins in %s, want %s", w.Number, want.part, got, want.from)
		}
		if want.to == "" {
			continue
		}
		if got := crimpName(w.ToEnd); got != want.to {
			t.Errorf("%s of %s ends in %s, want %s", w.Number, want.part, got, want.to)
		}
		ohm := lib.Terminal(want.from).ContactOhm + lib.Terminal(want.to).ContactOhm
		if math.Abs(w.EndsOhm-ohm) > 1e-12 {
			t.Errorf("%s: ends of %g Ω, want %g Ω", w.Number, w.EndsOhm, ohm)
		}
	}
}
