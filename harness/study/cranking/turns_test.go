package cranking_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/study/cranking"
)

// A starter turns the engine with what it needs, and not below it.
func TestTurns(t *testing.T) {
	for _, c := range []struct {
		starterV float64
		want     bool
	}{{6.99, false}, {7, true}, {7.01, true}, {math.NaN(), true}} {
		if got := (cranking.Case{StarterV: c.starterV, NeedsV: 7}).Turns(); got != c.want {
			t.Errorf("%g V: turns %t, want %t", c.starterV, got, c.want)
		}
	}
}

// withOhm is a design with electronics behind a keyed relay, and the library's starter or one of its own behind its relay.
func withOhm(ohm string, own bool) string {
	text := `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: OHM, at: battery tray}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  keyed: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm²}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: resistor}}
STARTER_RELAY
loads:
  tail lamp: {power: 20 W, behaves: constant power, minimum voltage: 9 V, at: rear, fed by: keyed, wire: {size: 1 mm²}, returns to: frame}
STARTER
`
	relay, starter := "", ""
	if own {
		relay = "  starter relay: {form: winch contactor 12 V, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 300 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}"
		starter = "  starter: {type: starter motorcycle, at: rear, fed by: starter relay, wire: {size: 25 mm², length: 1 m}, returns to: battery negative, return wire: {size: 25 mm², length: 1 m}}\nsituations:\n  starting: {on: all}"
	}
	return example.Design(strings.NewReplacer("OHM", ohm, "STARTER_RELAY\n", relay+"\n", "STARTER\n", starter+"\n").Replace(text))
}

// A worse battery never leaves more: neither the posts nor the starter nor a load has more volts, no relay holds again,
// and there is always an answer, however low the volts.
func TestWorseBatteryLeavesLess(t *testing.T) {
	for _, own := range []bool{false, true} {
		var before *cranking.Study
		for ohm := 4.0; ohm < 900; ohm *= 1.06 {
			text := withOhm(number(ohm)+" mΩ", own)
			s := cranking.Compute(buildtest.Circuit(t, text))
			for i, k := range s.Cases {
				if !(k.PostsV > 0) || !(k.StarterV > 0) || !(k.FirstV > 0) || own != s.Start.Own || len(k.Loads) == 0 {
					t.Fatalf("own %v, %.1f mΩ, %s: %.3f V at the posts, %.3f V at the starter, %.3f V at first, %d loads", own, ohm, k.Name, k.PostsV, k.StarterV, k.FirstV, len(k.Loads))
				}
				if before == nil {
					continue
				}
				const hair = 1e-6
				was := before.Cases[i]
				if k.PostsV > was.PostsV+hair || k.StarterV > was.StarterV+hair || k.FirstV > was.FirstV+hair || len(k.Drops) < len(was.Drops) || len(k.Loads) != len(was.Loads) {
					t.Errorf("own %v, %.1f mΩ, %s: %+v, before %+v", own, ohm, k.Name, k, was)
				}
				for j, l := range k.Loads {
					if l.Volts > was.Loads[j].Volts+hair {
						t.Errorf("own %v, %.1f mΩ, %s: %s gets %.3f V, before %.3f V", own, ohm, k.Name, l.Part.Name, l.Volts, was.Loads[j].Volts)
					}
				}
			}
			before = s
		}
		if k := before.Cases[0]; k.Turns() || len(k.Drops) == 0 {
			t.Errorf("own %v: at 900 mΩ it turns: %v; relays that let go: %d", own, k.Turns(), len(k.Drops))
		}
	}
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', 2, 64) }

// A starter that stands is its armature's resistance: 20 mΩ of the 120 A one at a fifth of 12 V, 19.0 mΩ with the machine's
// 6.29 A beside it. Behind 200 mΩ, 213 mΩ in mild air, that leaves 12.8 V · 19.0 / 232 = 1.05 V.
func TestStandingStarter(t *testing.T) {
	k := of(t, "battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 200 mΩ, at: battery tray}\nloads: {}\n").Cases[0]
	stands := 2.4 / (120 + machineA)
	if want := k.RestV * stands / (stands + k.Ohm); math.Abs(k.PostsV-want) > 1e-3 || math.Abs(k.DrawnA-want/stands) > 0.05 || math.Abs(want-1.05) > 0.02 {
		t.Errorf("%.3f V at %.1f A, want %.3f V", k.PostsV, k.DrawnA, want)
	}
}
