package sizing

import (
	"strings"
	"testing"
)

const left24 = `fusewright: 1
title: "24 V camper, sizes left open"
vehicle: invented
system: 24 V
practice: camper
battery: {chemistry: flooded, capacity: 110 Ah, resistance: 6 mΩ, at: chassis}
charging: {regulated: 28.2 V, kind: alternator, output: {1800 rpm: 35 A, 4000 rpm: 70 A, 6000 rpm: 80 A}, idle: 1800 rpm, cruise: 4500 rpm, at: engine, fed by: charge fuse, wire: {length: 2 m}}
places: {chassis: {ambient: 40 °C}, engine: {ambient: 60 °C}, living: {ambient: 30 °C}}
runs:
  - {from: chassis, to: living, length: 4 m}
wire: {size: auto}
batteries:
  house: {chemistry: LiFePO4, capacity: 100 Ah, resistance: 12 mΩ, at: living, fed by: house end, wire: {length: 150 mm}, returns to: battery negative}
chargers:
  booster: {type: DC-DC charger 15 A 24 V, at: living, fed by: start end, returns to: house negative, return wire: {length: 300 mm}}
fuses:
  charge fuse: {type: marine strip, rating: auto, at: chassis, fed by: battery, wire: {length: 150 mm}}
  start end: {type: marine strip, rating: auto, at: chassis, fed by: battery, wire: {length: 150 mm}}
  house end: {type: marine strip, rating: auto, at: living, fed by: booster, wire: {length: 300 mm}}
situations:
  driving: {engine: cruise}
`

// The cable of the charging system and those of a charger are chosen as any. By hand: 80 A less a quarter
// are 60 A for good, of which a strip of 60 A bears 48 A and one of 80 A 64 A; its cable carries 80 A until the machine
// is hot. The charger's wires carry what the smallest strip, 35 A, lets through.
func TestChargingIsSized(t *testing.T) {
	got := sizesOf(t, left24)
	for _, want := range []string{"charge fuse marine strip 80 A", "charging, wire 16 mm²", "start end marine strip 35 A"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
	for _, thin := range []string{"booster, wire 0", "booster, wire 1", "booster, wire 2"} {
		if strings.Contains(got, thin) || !strings.Contains(got, "booster, wire ") {
			t.Errorf("%q in %s", thin, got)
		}
	}
}
