package circuit_test

import (
	"testing"

	"fusewright/harness/proof/buildtest"
)

// A tail leads to a fuse and is no longer than a fuse may be from its source.
func TestTail(t *testing.T) {
	const load = "loads: {lamp: {power: 5 W, behaves: resistor, at: a, fed by: main, wire: {length: 100 mm}, " +
		"returns to: battery negative, return wire: {length: 100 mm}}}\n"
	for length, tail := range map[string]bool{"149 mm": true, "150 mm": true, "151 mm": false} {
		text := oneWire("a: {ambient: 30 °C}", "", "a", "a", "size: 1 mm², length: "+length) + load + "limits: {fuse distance: 150 mm}\n"
		c := buildtest.Circuit(t, text)
		for _, w := range c.Wires { // only the stub leads to a fuse
			if got, want := c.Tail(w), tail && w.To.Part.Name == "main"; got != want {
				t.Errorf("stub of %s: %s is a tail: %t", length, w.Number, got)
			}
		}
		if m, given := c.FuseDistanceM(c.Wires[0]); m != 0.15 || !given {
			t.Errorf("distance %g, given %t", m, given)
		}
	}
}
