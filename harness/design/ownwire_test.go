package design

import (
	"strings"
	"testing"
)

// Each feed has the wire that stands with it; what that leaves out is as in `wire` of the part, then
// of the design.
func TestWireOfEachFeed(t *testing.T) {
	d := mustRead(t, `fusewright: 1
title: t
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 14 Ah, at: a}
places: {a: {ambient: 30 °C}}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm², colour: BU}
grounds: {stud: {kind: frame stud, at: a}}
fuses: {f: {type: blade C, rating: 5 A, at: a, fed by: battery}, g: {type: blade C, rating: 5 A, at: a, fed by: battery}, h: {type: blade C, rating: 5 A, at: a, fed by: battery}, k: {type: blade C, rating: 5 A, at: a, fed by: {battery: auto}, wire: {size: 6 mm²}}}
loads:
  lamp: {power: 5 W, at: a, fed by: {f: 2.5 mm², g: {colour: YE, parallel: 2}, h: }, wire: {size: 1.5 mm², length: 400 mm}, returns to: stud, return wire: 4 mm²}
`)
	l := d.Loads[0]
	want := []struct{ from, size, colour, own string }{{"f", "2.5 mm²", "BU", "f"}, {"g", "1.5 mm²", "YE", "g"}, {"g", "1.5 mm²", "YE", "g"}, {"h", "1.5 mm²", "BU", "h"}}
	if len(l.FedBy) != len(want) {
		t.Fatalf("%d feeds, want %d", len(l.FedBy), len(want))
	}
	for i, f := range l.FedBy {
		if x := want[i]; f.From.Text != x.from || f.Wire.Size.Label != x.size || f.Wire.Colour.Code() != x.colour || f.Wire.Own != x.own {
			t.Errorf("feed %d is from %s, %s %s of %q, want %+v", i, f.From.Text, f.Wire.Size.Label, f.Wire.Colour.Code(), f.Wire.Own, x)
		}
	}
	if w := d.Fuses[3].FedBy[0].Wire; !w.SizeAuto || w.Own != "battery" {
		t.Errorf("of a size left open: %+v", w)
	}
	if w := l.Returns[0].Wire; w.Size.Label != "4 mm²" || w.Own != "" || w.Colour.Code() != "BK" {
		t.Errorf("return is %s %s", w.Size.Label, w.Colour.Code())
	}
}

// A metric size on the boat's usual insulation, which is in AWG, is refused once, where the insulation is chosen, with the
// one of its kind that has the size.
func TestSizeOfAnotherSystem(t *testing.T) {
	const text = "fusewright: 1\ntitle: t\nsystem: 12 V\npractice: marine\nbattery: {chemistry: AGM, capacity: 60 Ah, at: bay}\nplaces: {bay: {}}\nDEFAULT" +
		"fuses:\n  one: {at: bay, fed by: battery, wire: {size: 2.5 mm²}}\n  two: {at: bay, fed by: battery, wire: {size: 2.5 mm²}}\n  three: {at: bay, fed by: battery, wire: {size: 4 mm²}}\n"
	for put, want := range map[string]string{
		"": "t.yaml:8:48: wire of fuse \"one\": \"tinned marine 105 °C AWG\" has no size 2.5 mm² (expected insulation \"tinned marine 105 °C metric\", which has it, or 18 AWG",
		"wire: {insulation: tinned marine 105 °C AWG}\n": "t.yaml:7:7: wire: \"tinned marine 105 °C AWG\" has no size 2.5 mm², as wire of fuse \"one\" has (expected insulation \"tinned marine 105 °C metric\", which has it, or 18 AWG",
	} {
		_, err := Read("t.yaml", []byte(strings.ReplaceAll(text, "DEFAULT", put)), nil)
		if err == nil || !strings.Contains(err.Error(), want) || strings.Count(err.Error(), "has no size 2.5 mm²") != 1 || strings.Count(err.Error(), "has no size 4 mm²") != 1 {
			t.Errorf("%s: %v", put, err)
		}
	}
}
