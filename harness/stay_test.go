package harness_test

import (
	"math"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
)

// TestRelaysThatStayAreSolved: what a latch and an off delay feed, by situation. Each lamp
// is of 5 W at 12 V, 2.4 times as many ohms as volts: some 0.4 A on the battery.
func TestRelaysThatStayAreSolved(t *testing.T) {
	r := reviewtest.Of(t, example.Design(`
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
switches:
  push: {rating: 10 A, at: rear, fed by: pilot, momentary: yes}
relays:
  cabin: {latches: yes, at: battery tray, fed by: lamp fuse, coil: {fed by: push, returns to: frame, suppressed by: diode}}
  courtesy: {form: mini make, off delay: 30 s, at: battery tray, fed by: lamp fuse, coil: {fed by: pilot, returns to: frame, suppressed by: diode}}
loads:
  latched: {power: 5 W, behaves: resistor, at: rear, fed by: cabin, returns to: frame}
  delayed: {power: 5 W, behaves: resistor, at: rear, fed by: courtesy, returns to: frame}
situations:
  left: {key: off, closed: [cabin]}
  latched on: {on: [latched]}
  waiting: {on: [delayed]}
`))
	want := map[string][2]bool{ // latched, delayed
		"left": {true, false}, "latched on": {true, true}, "waiting": {false, true}, "off delay running": {false, true},
	}
	seen := 0
	for _, s := range r.Solutions {
		w, ok := want[s.Situation.Name]
		if !ok {
			continue
		}
		seen++
		if s.Status != solve.Converged {
			t.Errorf("%s: %s", s.Situation.Name, s.Status)
		}
		for _, b := range r.Circuit.Branches {
			if b.Load == nil || b.Load.Load == nil || b.Load.Standby {
				continue
			}
			on := w[0]
			if b.Load.Load.Name == "delayed" {
				on = w[1]
			}
			if a := math.Abs(s.Amps(b)); on != (a > 0.3 && a < 0.6) || !on && a > 1e-3 {
				t.Errorf("%s: %s takes %.3f A, on %v", s.Situation.Name, b.Load.Load.Name, a, on)
			}
		}
		if s.Situation.Name == "off delay running" && s.Situation.LastsS != 30 {
			t.Errorf("it lasts %g s", s.Situation.LastsS)
		}
	}
	if seen != len(want) {
		t.Errorf("%d situations of %d", seen, len(want))
	}
}
