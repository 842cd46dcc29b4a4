package remedy_test

import (
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
)

// TestHotPlace: wires through air at their class are mended by the next class, all of the
// place at once, and not by copper; where the air is cooler no class is tried.
func TestHotPlace(t *testing.T) {
	for _, c := range []struct {
		ambient, about, will string
	}{
		{"105 °C", "wires at battery tray - rear", "ISO 6722 thin wall class C"},
		{"89.9 °C", "wires at battery tray - rear", "ISO 6722 thin wall class C"},
	} {
		p := reviewtest.Of(t, []byte(example.Design("runs:\n  - {from: battery tray, to: rear, length: 600 mm, near: {what: exhaust, ambient: "+
			c.ambient+"}, cover: heat sleeve}\n"))).Remedies()
		if len(p.Causes) != 1 || p.Causes[0].Remedy == nil {
			t.Fatalf("%s: %d causes, the first %+v", c.ambient, len(p.Causes), p.Causes[0])
		}
		if x := p.Causes[0].Remedy; x.About != c.about || x.Will != c.will || len(p.Left) != 0 {
			t.Errorf("%s: %s: %s, %d left", c.ambient, x.About, x.Will, len(p.Left))
		}
	}
}

// TestFeedAndReturnTogether: where both wires of a load are a size too thin for its fuse,
// and too much is lost on them, both go up alike, by no more sizes than it takes.
func TestFeedAndReturnTogether(t *testing.T) {
	r := reviewtest.Of(t, []byte(`fusewright: 1
title: a motor at the end of a metre
vehicle: invented
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 20 Ah, rate: 10 h, resistance: 12 mΩ, at: tray}
charging: {regulated: 14.3 V, output: {1000 rpm: 30 A, 3000 rpm: 30 A}, idle: 1000 rpm, cruise: 3000 rpm, hot derating: 10 %}
places: {tray: {ambient: 25 °C}, far: {ambient: 25 °C}}
runs:
  - {from: tray, to: far, length: 1 m}
fuses:
  f: {type: blade C, rating: 20 A, at: tray, fed by: battery, wire: {length: 120 mm, size: 4 mm²}, stays live: test}
loads:
  m: {current: 12.5 A, behaves: motor, inrush: {peak: 3, time: 200 ms}, at: far, fed by: f, wire: {size: 1 mm²}, return wire: {size: 1 mm²}, returns to: battery negative, own switch: yes, stays live: test}
`))
	p := r.Remedies()
	if len(p.Causes) == 0 || p.Causes[0].Remedy == nil {
		t.Fatal("no remedy")
	}
	if x := p.Causes[0].Remedy; x.About != "m, wire and return wire" || x.Will != "1.5 mm²" || len(x.Mends) < 2 {
		t.Errorf("%s: %s mends %d", x.About, x.Will, len(x.Mends))
	}
}
