package harness_test

import (
	"fmt"
	"math"
	"strings"
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

// TestDelaysOverlap: what a long delay keeps on beside what the switch feeds now, by the most that the fuse carries in any
// situation. Each lamp is of 5 W at 12 V: some 0.4 A, two together some 0.8 A.
func TestDelaysOverlap(t *testing.T) {
	tests := []struct {
		name, switches, first, second, feeds string
		together                             bool
	}{
		{"no delay", "positions: [a, off, b]", "", "", "one 87 a two 87 b", false},
		{"off delay of 29 s", "positions: [a, off, b]", "off delay: 29 s, ", "", "one 87 a two 87 b", false},
		{"off delay of 30 s", "positions: [a, off, b]", "off delay: 30 s, ", "", "one 87 a two 87 b", true},
		{"off delay of 10 min", "positions: [a, off, b]", "off delay: 10 min, ", "", "one 87 a two 87 b", true},
		{"two changeovers on one switch", "rating: 5 A", "", "", "one 87 s two 87a s", false},
		{"the second waits for 29 s", "rating: 5 A", "", "on delay: 29 s, ", "one 87 s two 87a s", false},
		{"the second waits for 30 s", "rating: 5 A", "", "on delay: 30 s, ", "one 87 s two 87a s", true},
		{"the first stays on when its switch is off", "rating: 5 A", "off delay: 1 min, ", "", "one 87 s two 87a s", true},
		{"at a position the second waits", "positions: [a, off, b]", "", "on delay: 1 min, ", "one 87 b two 87a b", true},
	}
	for _, tt := range tests {
		var one, contact, a, two, rest, b string
		if _, err := fmt.Sscan(tt.feeds, &one, &contact, &a, &two, &rest, &b); err != nil {
			t.Fatal(err)
		}
		from := func(s string) string { return strings.TrimSuffix("sel "+s, " s") }
		r := reviewtest.Of(t, example.Design(fmt.Sprintf(`
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
switches:
  sel: {fed by: keyed feed, at: rear, %s}
relays:
  one: {form: mini changeover, %sat: rear, fed by: lamp fuse, coil: {fed by: %s, returns to: frame, suppressed by: diode}}
  two: {form: mini changeover, %sat: rear, fed by: lamp fuse, coil: {fed by: %s, returns to: frame, suppressed by: diode}}
loads:
  la: {power: 5 W, behaves: resistor, at: rear, fed by: one %s, returns to: frame}
  lb: {power: 5 W, behaves: resistor, at: rear, fed by: two %s, returns to: frame}
`, tt.switches, tt.first, from(a), tt.second, from(b), contact, rest)))
		fuse := r.Circuit.PartOf(r.Circuit.Design.Fuses[0]).Branches[0]
		mostA := 0.0
		for _, s := range r.Solutions {
			if s.Status != solve.Converged {
				t.Errorf("%s: %s: %s", tt.name, s.Situation.Name, s.Status)
			}
			mostA = max(mostA, math.Abs(s.Amps(fuse)))
		}
		if together := mostA > 0.7; together != tt.together || mostA < 0.3 || mostA > 1.2 {
			t.Errorf("%s: the fuse carries %.3f A, both together %v", tt.name, mostA, tt.together)
		}
	}
}
