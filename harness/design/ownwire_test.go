package design

import (
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
