package purchase_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/workshop/purchase"

	"github.com/google/go-cmp/cmp"
)

const grounded = `fusewright: 1
title: grounds
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: tray}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm², slack: 50 mm}
places: {tray: {ambient: 30 °C}}
grounds:
  stud: {at: tray, kind: frame stud, limit: 30 A}
  bar: {at: tray, kind: ground block, limit: 40 A, returns to: battery negative}
splices:
  pair: {at: tray, fed by: battery}
loads:
  left: {at: tray, type: LED auxiliary lamp, fed by: pair, returns to: bar}
  right: {at: tray, type: LED auxiliary lamp, fed by: pair, returns to: bar}
  stove: {at: tray, power: 60.04 W, behaves: resistor, fed by: battery, returns to: stud}
`

// Accessories stand by their type and power, equal ones on one line; grounds by
// what a shop sells; a splice is its crimp.
func TestAccessoriesAndGrounds(t *testing.T) {
	var got []string
	for _, l := range billOf(t, grounded).Lines {
		if l.Group == purchase.Loads || l.Group == purchase.Grounds {
			got = append(got, fmt.Sprintf("%g %s", l.Need, l.Item))
		}
	}
	want := []string{"2 LED auxiliary lamp, 18 W", "1 stove, 60 W",
		"1 bolt M6 with nut and serrated washers, for a frame stud", "1 ground block, 3 ways M6, 40 A"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A load given by its ohms is bought by its watts, 144 V² ÷ 2.4 Ω; one that takes volts before another as a resistor for twice the
// heat of ordinary use: 1 A at 12 V over 5 Ω and 7 Ω, 1.2 A at a lead battery's 14.4 V, 2 × 7.2 W, up to whole watts.
func TestResistorsInSeries(t *testing.T) {
	var got []string
	for _, l := range billOf(t, grounded+`  oven: {at: tray, resistance: 2.4 Ω, rated at: 12 V, fed by: battery, returns to: stud}
  dropper: {at: tray, resistance: 5 Ω, fed by: battery}
  coil: {at: tray, resistance: 7 Ω, in series with: dropper, returns to: stud}
`).Lines {
		if l.Group == purchase.Loads && !strings.Contains(l.Item, "lamp") && !strings.Contains(l.Item, "stove") {
			got = append(got, l.Item)
		}
	}
	want := []string{"oven, 60 W", "dropper, 5 Ω, at least 15 W", "coil, 7 Ω, at least 21 W"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// TestJointIsOnePart: the splice of three wires of 1 mm², 3 mm² together, is one
// crimp part, and not a butt splice for each end; those of the stove's and the lamps' leads
// stay: a lamp whose type ends in contacts has no housing for them without a plug.
func TestJointIsOnePart(t *testing.T) {
	var got []string
	for _, l := range billOf(t, grounded).Lines {
		if l.Group == purchase.Terminals && strings.Contains(l.Item, "splice") {
			got = append(got, fmt.Sprintf("%g %s for %s", l.Need, l.Item, strings.Join(l.For, " ")))
		}
	}
	want := []string{"6 butt splice red for W1 W3 W4 W5 W6 W7", "1 open-barrel splice 6 mm² for X3"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A fuse that is left open and feeds nothing is not bought; one of a stated rating is.
func TestNoFuseForNothing(t *testing.T) {
	for fuse, want := range map[string]int{"auto": 0, "5 A": 1} {
		n := 0
		for _, l := range billOf(t, grounded+"blocks: {b: {at: tray, type: fuse block 6 way blade C, fed by: battery, ways: {1: {fuse: "+fuse+"}}}}\n").Lines {
			if l.Group == purchase.Fuses {
				n++
			}
		}
		if n != want {
			t.Errorf("%s: %d lines of fuses, want %d", fuse, n, want)
		}
	}
}
