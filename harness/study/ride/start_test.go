package ride_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/study/cranking"
	"fusewright/harness/study/ride"
)

// A leg in which the design's own starter turns begins as the study of starts has it: the same current and the same volts,
// of a battery as full and as cold, in the cold too and where it does not turn.
func TestStartAsTheStudyHasIt(t *testing.T) {
	const text = `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: OHM, at: battery tray}
relays:
  starter relay: {form: winch contactor 12 V, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 300 mm}, coil: {fed by: button, returns to: frame, suppressed by: diode}}
switches:
  button: {rating: 5 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm²}, momentary: yes}
loads:
  starter: {type: starter motorcycle, at: rear, fed by: starter relay, wire: {size: 25 mm², length: 1 m}, returns to: battery negative, return wire: {size: 25 mm², length: 1 m}}
situations:
  starting: {on: [starter]}
  riding: {engine: cruise}
rides:
  mild: {start charge: 100 %, legs: [{lasts: 10 s, on: [starter], ambient: 20 °C}]}
  cold: {start charge: 100 %, legs: [{lasts: 10 s, on: [starter], ambient: 0 °C}]}
`
	for _, ohm := range []string{"9 mΩ", "22 mΩ", "45 mΩ", "150 mΩ"} {
		c := buildtest.Circuit(t, example.Design(strings.NewReplacer("OHM", ohm).Replace(text)))
		s := cranking.Compute(c)
		for i, r := range c.Design.Rides {
			got, err := ride.Simulate(c, r, ride.Options{})
			if err != nil {
				t.Fatal(err)
			}
			k, first := s.Cases[i], got.Points[0]
			if math.Abs(first.BusV-k.PostsV) > 0.01 || !(first.BusV > 0.3) || got.Legs[0].Trouble != "" {
				t.Errorf("%s, %s: %.3f V and %.1f A on the ride, %.3f V in the study; %s", ohm, r.Name, first.BusV, first.BatteryA, k.PostsV, got.Legs[0].Trouble)
			}
		}
	}
}
