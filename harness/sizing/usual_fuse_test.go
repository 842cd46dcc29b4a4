package sizing

import (
	"strings"
	"testing"
)

const cold = `fusewright: 1
title: fridge
vehicle: invented
system: SYSTEM
practice: camper
battery: {chemistry: AGM, capacity: 95 Ah, resistance: 6 mΩ, at: box}
places: {box: {ambient: 40 °C}, rear: {ambient: 30 °C}}
runs:
  - {from: box, to: rear, length: 2 m}
wire: {size: auto}
fuses:
  fridge fuse: {type: blade C, rating: auto, at: box, fed by: battery, wire: {length: 150 mm}}
loads:
  fridge: {LOAD, at: rear, own switch: yes, stays live: cold food, fed by: fridge fuse, returns to: battery negative}
situations:
  parked: {key: off, on: [fridge]}
`

// A compressor fridge gets the fuse of its makers' tables, however little its label says: 15 A at 12 V, 7.5 A at 24 V, but
// no more than its own maker allows, and more where its start of 45 A takes it. A motor on for a minute, of 3.75 A, is
// held by 5 A where it starts with 5.6 A; where nothing says how, it is taken to start with 11 A, for which 5 A is too fast.
func TestMakersFuse(t *testing.T) {
	for _, c := range []struct{ system, load, want string }{
		{"12 V", "type: compressor fridge, power: 15 W", "blade C 15 A"},
		{"24 V", "type: compressor fridge, power: 15 W, rated at: 24 V, minimum voltage: 20 V", "blade C 7.5 A"},
		{"12 V", "type: compressor fridge, power: 15 W, maximum fuse: 10 A", "blade C 10 A"},
		{"12 V", "type: compressor fridge, power: 180 W", "blade C 30 A"},
		{"12 V", "power: 15 W, behaves: constant power", "blade C 3 A"},
		{"12 V", "current: 3.75 A, behaves: motor, on for: 1 min, every: 1 h", "blade C 7.5 A"},
		{"12 V", "current: 3.75 A, behaves: motor, on for: 1 min, every: 1 h, inrush: {peak: 1.5, time: 50 ms}", "blade C 5 A"},
	} {
		if got := sizesOf(t, strings.NewReplacer("SYSTEM", c.system, "LOAD", c.load).Replace(cold)); !strings.Contains(got, "fridge fuse "+c.want) {
			t.Errorf("%s at %s: %s, want %s", c.load, c.system, got, c.want)
		}
	}
}

// The fuse of the makers is found at once, whatever the studs of other types take: the 6 mm² that is
// laid to it fits a full-size contact and not a smaller one. A wire that 15 A would burn keeps its fuse small.
func TestMakersFuseAtGivenWires(t *testing.T) {
	for wire, want := range map[string]string{"6 mm²": "blade C 15 A", "0.5 mm²": "blade C 7.5 A"} {
		src := strings.NewReplacer("SYSTEM", "12 V", "LOAD", "type: compressor fridge, wire: {size: "+wire+"}, return wire: {size: "+wire+"}",
			"type: blade C, rating: auto, at: box, fed by: battery, wire: {length: 150 mm}", "at: box, fed by: battery, wire: {size: 6 mm², length: 150 mm}").Replace(cold)
		if got := sizesOf(t, src); !strings.Contains(got, "fridge fuse "+want) {
			t.Errorf("%s: %s, want %s", wire, got, want)
		}
	}
}
