package fault_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/fault"
)

// twoSpeeds is a blower whose positions part behind one fuse; SLOW feeds its dropper.
const twoSpeeds = `
fusewright: 1
title: Two speeds
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 6 mΩ, at: box}
places: {box: {ambient: 40 °C}}
wire: {insulation: ISO 6722 thin wall class B, size: 1.5 mm²}
fuses:
  f: {type: blade C, rating: 10 A, at: box, fed by: battery, wire: {length: 150 mm}}
resistors:
  dropper: {resistance: 0.6 Ω, rating: 60 W, thermal fuse: yes, at: box, fed by: SLOW, wire: {length: 500 mm}}
switches:
  speed: {type: rocker 16 A, at: box, fed by: f, wire: {length: 500 mm}, positions: [off, low, high], stays live: "test"}
loads:
  blower: {power: 90 W, behaves: motor, at: box, fed by: [speed high, dropper], wire: {length: 500 mm}, return wire: {length: 500 mm}, returns to: battery negative, stays live: "test"}
`

// A short behind a dropper gets most of its current round by the other way. The little that comes through the
// dropper passes the same fuse, which ends both; where it comes straight from the battery, nothing ends it.
func TestFuseBeforeSeveralWays(t *testing.T) {
	for _, test := range []struct {
		slow  string
		fused bool
	}{{"speed low", true}, {"battery", false}} {
		c := buildtest.Circuit(t, strings.Replace(twoSpeeds, "SLOW", test.slow, 1))
		for _, w := range c.Wires {
			if w.From.Part.Name != "dropper" || w.To.Part.Name != "blower" {
				continue
			}
			for _, sh := range fault.Compute(c).OfWire(w) {
				for state, r := range sh.Results {
					fused := r.Device != nil && r.Device.Part.Name == "f" && !r.Bare && !math.IsInf(r.SlowS, 1)
					if fused != test.fused {
						t.Errorf("dropper from %s, %v, state %d: fused %t, want %t", test.slow, sh.Where, state, fused, test.fused)
					}
				}
			}
		}
	}
}
