package circuit_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
)

// TestRings: of a ring each fuse is fed from its far end by the next one round, and so is the wire before it; what feeds the
// ring and what hangs on it is not of it. Wires side by side close none, nor does a diode that blocks, nor a second battery, which has the rings of its own.
func TestRings(t *testing.T) {
	const text = `fusewright: 1
title: t
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 10 Ah, at: a}
places: {a: {ambient: 30 °C}}
MORE
fuses:
  main: {type: blade C, rating: 30 A, at: a, fed by: battery}
  left: {type: blade C, rating: 15 A, at: a, fed by: main}
  right: {type: blade C, rating: 15 A, at: a, fed by: main}
  joint: {type: blade C, rating: 10 A, at: a, fed by: bow}
  way: {type: blade C, rating: 5 A, at: a, fed by: stern}
splices:
  bow: {at: a, fed by: left}
  stern: {at: a, fed by: FEEDS}
loads:
  lamp: {power: 5 W, behaves: resistor, at: a, fed by: way, returns to: battery negative}
`
	for _, c := range []struct{ name, feeds, more, want string }{
		{"a ring", "[right, joint]", "", "left: joint; right: joint; joint: right"},
		{"open", "right", "", ""},
		{"two wires of one feed", "right, wire: {parallel: 2}", "", ""},
		{"diode against it", "[right, valve]", "diodes:\n  valve: {type: Schottky diode 10 A, at: a, fed by: joint}", "right: joint"},
		{"without the joint's fuse", "[right, bow]", "", "left: right; right: left"},
		{"two batteries", "[right, other]", "batteries:\n  other: {chemistry: AGM, capacity: 10 Ah, at: a, returns to: battery negative}", ""},
		{"a ring beside another battery", "[right, joint]", "batteries:\n  other: {chemistry: AGM, capacity: 10 Ah, at: a, returns to: battery negative}", "left: joint; right: joint; joint: right"},
		{"a ring and another battery", "[right, joint, other]", "batteries:\n  other: {chemistry: AGM, capacity: 10 Ah, at: a, returns to: battery negative}", "left: joint; right: nothing; joint: nothing"},
		{"a ring that charges another battery", "[right, joint]", "batteries:\n  other: {chemistry: AGM, capacity: 10 Ah, at: a, fed by: stern, returns to: battery negative}", "left: joint; right: nothing; joint: nothing"},
	} {
		c1 := buildtest.Circuit(t, strings.NewReplacer("FEEDS", c.feeds, "MORE", c.more).Replace(text))
		rings := c1.Rings()
		var got []string
		for _, b := range c1.Branches {
			if b.Kind == circuit.FuseBranch && rings.In(b) {
				var far []string
				for _, f := range rings.Far[b.Index] {
					far = append(far, f.Part.Name)
				}
				slices.Sort(far)
				got = append(got, b.Part.Name+": "+wording.And(far))
			}
		}
		if s := strings.Join(got, "; "); s != c.want {
			t.Errorf("%s: %q, want %q", c.name, s, c.want)
		}
	}
}

// The fuses of a ladder are one ring; pairs that meet at the battery's post alone are rings of two.
func TestLargestRing(t *testing.T) {
	ladder := func(n int) string {
		fuses, splices := "", ""
		for i := range n {
			fuses += fmt.Sprintf("  f%d: {type: blade C, rating: 5 A, at: a, fed by: battery}\n", i)
			by := "f0"
			if i > 0 {
				by = fmt.Sprintf("[f%d, s%d]", i, i-1)
			}
			splices += fmt.Sprintf("  s%d: {at: a, fed by: %s}\n", i, by)
		}
		return "fuses:\n" + fuses + "splices:\n" + splices + fmt.Sprintf("loads:\n  l: {power: 5 W, behaves: resistor, at: a, fed by: s%d, returns to: battery negative}\n", n-1)
	}
	pairs := `fuses:
  a1: {type: blade C, rating: 5 A, at: a, fed by: battery}
  a2: {type: blade C, rating: 5 A, at: a, fed by: battery}
  b1: {type: blade C, rating: 5 A, at: a, fed by: battery}
  b2: {type: blade C, rating: 5 A, at: a, fed by: battery}
loads:
  a: {power: 5 W, behaves: resistor, at: a, fed by: [a1, a2], returns to: battery negative}
  b: {power: 5 W, behaves: resistor, at: a, fed by: [b1, b2], returns to: battery negative}
`
	for name, c := range map[string]struct {
		text string
		want int
	}{"a ladder of two": {ladder(2), 2}, "of seven": {ladder(7), 7}, "pairs": {pairs, 2}} {
		got := buildtest.Circuit(t, "fusewright: 1\ntitle: t\nsystem: 12 V\npractice: off-road\nbattery: {chemistry: AGM, capacity: 60 Ah, at: a}\nplaces: {a: {}}\n"+c.text)
		if n := got.Rings().Largest(got); n != c.want {
			t.Errorf("%s: %d fuses, want %d", name, n, c.want)
		}
	}
}

// TestRingsOfAFurtherBattery: what hangs on it twice is a ring, its link to the first one is none, nor is a bar that both feed.
func TestRingsOfAFurtherBattery(t *testing.T) {
	const text = `fusewright: 1
title: t
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 10 Ah, at: a}
places: {a: {ambient: 30 °C}}
batteries:
  house: {chemistry: AGM, capacity: 10 Ah, at: a, fed by: LINKS, returns to: battery negative}
fuses:
  start end: {type: blade C, rating: 30 A, at: a, fed by: battery}
  second end: {type: blade C, rating: 30 A, at: a, fed by: battery}
  left: {type: blade C, rating: 15 A, at: a, fed by: LEFT}
  right: {type: blade C, rating: 15 A, at: a, fed by: house}
  joint: {type: blade C, rating: 10 A, at: a, fed by: bow}
splices:
  bow: {at: a, fed by: left}
  stern: {at: a, fed by: [right, joint]}
loads:
  lamp: {power: 5 W, behaves: resistor, at: a, fed by: stern, returns to: battery negative}
`
	for _, c := range []struct{ name, left, links, want string }{
		{"of the house", "house", "start end", "joint left right"},
		{"one leg from each", "battery", "start end", ""},
		{"two links", "house", "[start end, second end]", "joint left right"},
		{"one leg from its post over the wire of the link", "start end", "start end", "joint left right"},
	} {
		c1 := buildtest.Circuit(t, strings.NewReplacer("LINKS", c.links, "LEFT", c.left).Replace(text))
		var got []string
		for _, b := range c1.Rings().Fuses(c1) {
			got = append(got, b.Part.Name)
		}
		slices.Sort(got)
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %q, want %q", c.name, s, c.want)
		}
	}
}
