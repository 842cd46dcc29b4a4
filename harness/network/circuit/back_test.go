package circuit_test

import (
	"strings"
	"testing"

	"fusewright/harness/network/circuit"

	"github.com/google/go-cmp/cmp"
)

// back has a lamp fused and switched in its return, a fan whose ground a relay closes, the
// relay's coil switched in its return, and a strap of a part that moves.
const back = `fusewright: 1
title: t
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 10 Ah, at: a}
places: {a: {}, fork: {moves: yes}}
runs: [{from: a, to: fork, length: 500 mm}]
grounds:
  stud: {kind: frame stud, at: a}
  strapped: {kind: frame stud, at: fork, returns to: stud}
  measured: {kind: frame stud, at: fork, frame resistance: 20 mΩ, returns to: stud}
  still: {kind: frame stud, at: a, returns to: stud}
fuses:
  main: {type: blade C, rating: 10 A, at: a, fed by: battery}
  back: {type: blade C, rating: 5 A, at: a, returns to: lamp switch}
switches:
  lamp switch: {rating: 5 A, at: a, returns to: stud}
  fan switch: {rating: 5 A, at: a, returns to: stud}
relays:
  fan relay: {form: mini changeover, at: a, returns to: stud, coil: {fed by: main, returns to: fan switch}}
loads:
  lamp: {power: 5 W, behaves: resistor, at: a, fed by: main, returns to: back}
  fan: {power: 5 W, behaves: resistor, at: a, fed by: main, returns to: fan relay}
  pilot: {power: 5 W, behaves: resistor, at: a, fed by: main, returns to: fan relay 87a}
situations:
  lit: {on: [lamp]}
  cooled: {on: [fan]}
`

func TestWaysBack(t *testing.T) {
	c := build(t, "t.yaml", back)
	ways := map[string][]string{"lamp": {"F2", "S1"}, "fan": {"K1:87-30"}, "pilot": {"K1:87a-30"}}
	for load, want := range ways {
		var got []string
		for _, b := range c.MainReturn(node(t, c, load, "-"), c.Negative()).Branches {
			if b.Part != nil && b.Part.InReturn {
				got = append(got, b.Name)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", load, diff)
		}
	}
	if diff := cmp.Diff([]string{"E1"}, names(c.DrawsBack(branch(t, c, "S1")))); diff != "" {
		t.Errorf("what returns through the lamp switch (-want +got):\n%s", diff)
	}
	for _, name := range []string{"F2", "S1", "K1:87-30"} {
		if b := branch(t, c, name); b.Feeds() || !b.Returns() || b.Part.Inlet() != nil {
			t.Errorf("%s counts as part of a feed", name)
		}
	}
	if b := branch(t, c, "F1"); !b.Feeds() || b.Returns() {
		t.Error("F1 counts as part of a return")
	}
}

// Of two ways home the one that carries most, the first where both carry the same.
func TestHeaviestReturn(t *testing.T) {
	c := build(t, "t.yaml", strings.Replace(back, "fed by: main, returns to: back}", "fed by: main, returns to: [stud, battery negative]}", 1))
	from := node(t, c, "lamp", "-")
	first, second := c.HeaviestReturn(from, c.Negative(), make([]float64, len(c.Branches))), circuit.Path{}
	amps := make([]float64, len(c.Branches))
	amps[from.ReturnsBy()[1].Index] = 0.1
	if second = c.HeaviestReturn(from, c.Negative(), amps); len(second.Branches) != 1 || second.Branches[0] != from.ReturnsBy()[1] {
		t.Errorf("by %v", names(second.Branches))
	}
	if first.Branches[0] != from.ReturnsBy()[0] || !first.Whole || !second.Whole {
		t.Errorf("of equals by %v", names(first.Branches))
	}
}

// A load that is on closes the contacts in its return, and those of the coil of a relay there.
func TestContactsOfReturns(t *testing.T) {
	c := build(t, "t.yaml", back)
	want := map[string][]string{"lit": {"K1:87a-30", "S1"}, "cooled": {"K1:87a-30", "S2"}, "key off": {"K1:87a-30"}}
	for _, s := range c.Design.Situations {
		closed := circuit.Contacts(c, s)
		var got []string
		for i, b := range c.Branches {
			if closed[i] {
				got = append(got, b.Name)
			}
		}
		if diff := cmp.Diff(want[s.Name], got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", s.Name, diff)
		}
	}
}

// A coil whose return is open pulls nothing in, though it is live.
func TestLiveKeyOffBySwitchedReturn(t *testing.T) {
	c := build(t, "t.yaml", back)
	atRest := c.JoinedBack(func(b *circuit.Branch) bool { return b.Closer.Break != nil })
	for load, want := range map[string]bool{"lamp": false, "fan": false, "pilot": true} {
		if got := atRest[node(t, c, load, "-").Index]; got != want {
			t.Errorf("%s has its way back at rest: %t, want %t", load, got, want)
		}
	}
	held := build(t, "t.yaml", start+`
switches: {button: {rating: 5 A, at: a, returns to: stud}}
relays: {r: {form: mini make, at: a, fed by: battery, coil: {fed by: battery, returns to: button}}}
loads: {horn: {power: 5 W, behaves: resistor, at: a, fed by: r, returns to: stud}}
`)
	i := node(t, held, "horn", "+").Index
	if held.LiveKeyOff(false)[i] || !held.LiveKeyOff(true)[i] {
		t.Error("the horn is live only while the button is held")
	}
}

// The bearing or hinge of a part that moves is not counted on beside its strap, unless its
// resistance is given.
func TestStrapAlone(t *testing.T) {
	c := build(t, "t.yaml", back)
	for name, want := range map[string]int{"strapped": 0, "measured": 1, "still": 1, "stud": 1} {
		if got := len(named(t, c, name).Branches); got != want {
			t.Errorf("%s has %d ways through the frame, want %d", name, got, want)
		}
	}
}
