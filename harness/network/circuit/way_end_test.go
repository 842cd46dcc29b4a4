package circuit_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
)

// TestWayEnd: a way of a block of no known type ends in a tab as far as blade blocks go, 30 A, and in a stud beyond; a type says
// its own.
func TestWayEnd(t *testing.T) {
	for of, want := range map[string]string{"way limit: 29 A": "tab 6.3", "way limit: 30 A": "tab 6.3", "way limit: 31 A": "ring M5", "way limit: 60 A": "ring M5",
		"type: fuse block 6 way blade C": "ring M4", "type: strip fuse block 4 way SF30": "ring M5"} {
		c := buildtest.Circuit(t, strings.Replace(`fusewright: 1
title: t
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 10 Ah, at: a}
places: {a: {ambient: 30 °C}}
blocks:
  panel: {OF, at: a, fed by: battery, ways: {1: none}}
loads:
  lamp: {power: 5 W, behaves: resistor, at: a, fed by: panel 1, returns to: battery negative}
`, "OF", of, 1))
		for _, p := range c.Parts {
			if p.Name == "panel" {
				way := p.Terminal("1")
				if assumed := !strings.HasPrefix(of, "type"); way.Kind != want || way.KindAssumed != assumed {
					t.Errorf("%s: %s, assumed %t; want %s, %t", of, way.Kind, way.KindAssumed, want, assumed)
				}
			}
		}
	}
}
