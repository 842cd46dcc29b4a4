package circuit_test

import (
	"testing"

	"fusewright/harness/proof/buildtest"
)

const servingDesign = `fusewright: 1
title: what fuses are for
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 90 Ah, at: bay}
batteries: {house: {chemistry: AGM, capacity: 90 Ah, at: bay, fed by: [booster end, roof end], wire: {length: 150 mm}}}
charging: {regulated: 14.2 V, output: {800 rpm: 40 A, 3000 rpm: 90 A}, idle: 800 rpm, cruise: 2500 rpm, at: bay, fed by: machine fuse, wire: {length: 1 m}}
places: {bay: {ambient: 40 °C}}
wire: {size: 16 mm²}
fuses:
  machine fuse: {type: class T, rating: 110 A, at: bay, fed by: battery, wire: {length: 150 mm}}
  start end: {type: class T, rating: 30 A, at: bay, fed by: battery, wire: {length: 150 mm}}
  booster end: {type: class T, rating: 30 A, at: bay, fed by: booster, wire: {length: 150 mm}}
  roof end: {type: class T, rating: auto, at: bay, fed by: roof, wire: {length: 150 mm}}
  left over: {type: class T, rating: auto, at: bay, fed by: battery, wire: {length: 150 mm}}
chargers:
  booster: {type: DC-DC charger 20 A, at: bay, fed by: start end, wire: {length: 1 m}}
  roof: {type: MPPT controller 20 A, panel: 200 W, at: bay}
situations:
  parked: {key: off}
`

// What is charged through a fuse uses it as what draws does, and so does what charges through it: the fuse
// of the charging system's cable is no idle one. Those at the outputs of chargers are fed by them alone.
func TestServes(t *testing.T) {
	c := buildtest.Circuit(t, servingDesign)
	for name, want := range map[string]struct {
		serves, idle bool
		charger      string
	}{
		"machine fuse": {serves: true}, "start end": {serves: true}, "booster end": {serves: true, charger: "booster"},
		"roof end": {serves: true, charger: "roof"}, "left over": {idle: true},
	} {
		b := named(t, c, name).Branches[0]
		charger := ""
		for _, p := range c.ChargersAbove(b.A) {
			charger += p.Name
		}
		if c.Serves(b) != want.serves || c.Idle(b) != want.idle || charger != want.charger {
			t.Errorf("%s: serves %t, idle %t, fed by %q", name, c.Serves(b), c.Idle(b), charger)
		}
	}
}
