package circuit_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
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

// Of a plug with two ways 1 is the plus and 2 the minus, or the other way round where the
// type says so; a switch's feed comes to 1. Of three ways nothing is known.
func TestCavities(t *testing.T) {
	for _, c := range []struct{ name, part, plug, want string }{
		{"an accessory", "lamp: {power: 5 W, behaves: resistor, plug: sealed 1.5, LINE}", "", "cavity 1 cavity 2"},
		{"its plus in the second", "lamp: {type: own lamp, plug: sealed 1.5, LINE}", "", "cavity 2 cavity 1"},
		{"a housing of three", "lamp: {power: 5 W, behaves: resistor, plug: sealed 1.5, LINE}", "[main, other]", " "},
		{"no plug", "lamp: {power: 5 W, behaves: resistor, LINE}", "", " "},
	} {
		from := c.plug
		if from == "" {
			from = "main"
		}
		text := strings.SplitN(plugged, "switches:", 2)[0] +
			"  other: {type: blade C, rating: 10 A, fed by: battery, wire: {length: 100 mm}}\nloads:\n  " +
			strings.Replace(c.part, "LINE", "fed by: "+from+", wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}", 1) + "\n"
		lib := library.Default()
		own := *lib.Load("horn")
		own.Name, own.Aliases, own.PlusCavity = "own lamp", nil, 2
		with := *lib
		with.Loads = append(slices.Clone(lib.Loads), &own)
		d, err := design.Read("cavities.yaml", []byte(text), &with)
		if err != nil {
			t.Fatal(err)
		}
		built, err := circuit.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		lamp := named(t, built, "lamp")
		if got := lamp.Terminal("+").Mark + " " + lamp.Terminal("-").Mark; got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	rocker := named(t, build(t, "plugs.yaml", strings.Replace(plugged, "plug: sealed 2.8, ", "", 1)), "rocker")
	if got := rocker.Terminal("in").Mark + " " + rocker.Terminal("out").Mark; got != "C NO" {
		t.Errorf("a rocker's terminals: %q", got)
	}
}

// What a label says a wire is for.
func TestPurpose(t *testing.T) {
	part := func(kind circuit.Kind, name string) *circuit.Terminal {
		return &circuit.Terminal{Part: &circuit.Part{Kind: kind, Name: name}}
	}
	box, lamp, relay, bar := part(circuit.Block, "box"), part(circuit.Load, "left lamp"), part(circuit.Relay, "keyed"), part(circuit.Ground, "bar")
	for want, w := range map[string]circuit.Wire{
		"left lamp +":  {Role: circuit.FeedWire, From: box, To: lamp},
		"left lamp -":  {Role: circuit.ReturnWire, From: lamp, To: bar},
		"keyed coil +": {Role: circuit.CoilFeedWire, From: box, To: relay},
		"keyed coil -": {Role: circuit.CoilReturnWire, From: relay, To: bar},
		"keyed feed":   {Role: circuit.FeedWire, From: box, To: relay},
		"bar return":   {Role: circuit.ReturnWire, From: bar, To: box},
	} {
		if got := w.Purpose(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
