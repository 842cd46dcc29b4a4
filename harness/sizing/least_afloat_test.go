package sizing

import (
	"strings"
	"testing"
)

// On a boat no wire is chosen thinner than the 1 mm² of its standard, that of a relay's coil
// neither, unless in a sheath; ashore a coil's is as thin as vehicle wire is made for.
func TestLeastWireAfloat(t *testing.T) {
	const coil = `fusewright: 1
title: horn
vehicle: invented
system: 12 V
practice: PRACTICE
battery: {chemistry: AGM, capacity: 95 Ah, resistance: 6 mΩ, at: box}
places: {box: {ambient: 40 °C, petrol vapour: no}, helm: {ambient: 30 °C, petrol vapour: no}}
runs:
  - {from: box, to: helm, length: 2 m, cover: corrugated conduit}
wire: {insulation: TYPE, size: auto}
fuses:
  horn fuse: {type: blade C, rating: 10 A, at: box, fed by: battery, wire: {size: 2.5 mm², length: 150 mm}}
  pilot fuse: {type: blade C, rating: 3 A, at: box, fed by: battery, wire: {size: 2.5 mm², length: 150 mm}}
switches:
  button: {type: horn button 10 A, at: helm, fed by: pilot fuse, wire: {size: 1 mm²}}
relays:
  horn relay: {form: mini make, at: box, fed by: horn fuse, wire: {size: 2.5 mm², length: 200 mm}, coil: {fed by: button, returns to: battery negative, suppressed by: diode, wire: {WIRE}}}
loads:
  horn: {type: horn, at: helm, fed by: horn relay, wire: {size: 2.5 mm²}, returns to: battery negative, return wire: {size: 2.5 mm²}}
`
	for put, want := range map[string]string{
		"marine | tinned marine 105 °C metric | size: auto":                "1 mm²",
		"marine | tinned marine 105 °C metric | size: auto, sheathed: yes": "0.75 mm²",
		"off-road | ISO 6722 thin wall class B | size: auto":               "0.5 mm²",
	} {
		v := strings.Split(put, " | ")
		src := strings.NewReplacer("PRACTICE", v[0], "TYPE", v[1], "WIRE", v[2]).Replace(coil)
		if got := sizesOf(t, src); !strings.Contains(got, "horn relay, coil wire "+want) {
			t.Errorf("%s: %s, want %s", put, got, want)
		}
	}
}
