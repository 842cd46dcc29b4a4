package purchase_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/workshop/purchase"
)

// Feed and return of a load in twin cable are one length of cable.
func TestTwinCableIsBoughtOnce(t *testing.T) {
	const text = `fusewright: 1
title: twin
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: fork}
places: {fork: {ambient: 40 °C}}
wire: {insulation: twin sheathed, size: 1.5 mm²}
loads:
  lamp: {power: 20 W, fed by: battery, returns to: battery negative, wire: {length: 2 m}, return wire: {length: 2 m}}
  fan: {power: 20 W, fed by: battery, returns to: battery negative, wire: {length: 3 m}, return wire: {length: 1 m}}
`
	var got []string
	for _, l := range billOf(t, text).Lines {
		if l.Group == purchase.Wire {
			got = append(got, fmt.Sprintf("%.2f %s %s", l.Need, l.Item, strings.Join(l.For, " ")))
		}
	}
	// 2 m and 3 m, each with a few centimetres for its ends.
	if s := strings.Join(got, "\n"); !strings.HasPrefix(s, "5.") || !strings.HasSuffix(s, "twin sheathed thin wall class B, 2 × 1.5 mm² W1 W3 W2 W4") && !strings.HasSuffix(s, "W1 W2 W3 W4") {
		t.Error(s)
	}
}
