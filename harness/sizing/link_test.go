package sizing

import (
	"strings"
	"testing"
)

const linked = `fusewright: 1
title: "two batteries joined by a sensing relay"
vehicle: invented
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 90 Ah, rate: 10 h, resistance: 4 mΩ, at: tray}
charging: {regulated: 14.3 V, output: {1300 rpm: 45 A, 3000 rpm: 100 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
vehicle loads: {machine: {power: 300 W, when: running}}
places: {tray: {ambient: 40 °C}, rear: {ambient: 40 °C}}
runs:
  - {from: tray, to: rear, length: 3 m, cover: corrugated conduit}
wire: {insulation: ISO 6722 thin wall class B, size: auto}
grounds: {frame: {kind: frame stud, at: tray, limit: 200 A, frame resistance: 2 mΩ}}
batteries:
  house: {chemistry: AGM, capacity: 180 Ah, rate: 10 h, resistance: 2 mΩ, at: rear, fed by: house end, wire: {length: 120 mm}, returns to: frame, return wire: {}}
fuses:
  start end: {type: strip SF51, rating: 60 A, at: tray, fed by: battery, wire: {length: 120 mm}}
  house end: {type: strip SF51, rating: 60 A, at: rear, fed by: charging relay}
relays:
  charging relay: {form: voltage-sensing relay 140 A 12 V, at: tray, fed by: start end, wire: {length: 120 mm}, coil: {returns to: frame, return wire: {}}}
situations:
  driving: {engine: cruise, on: [], charge: {house: 20 %}}
`

// The cable of a link is good for what flows into the flat battery, whatever its fuses are: 78 A
// through 10 mm², which may carry 71 A, so 16 mm², there and back.
func TestLinkBearsEqualising(t *testing.T) {
	got := sizesOf(t, linked)
	for _, want := range []string{"house end, wire 16 mm²", "house, return wire 16 mm²"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
}
