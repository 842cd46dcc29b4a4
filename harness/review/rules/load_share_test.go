package rules_test

import (
	"testing"

	"fusewright/harness/review/finding"
)

// A load share of 0.8 is for what heats the fuse for good: 17 A of 20 A on for as long
// as every, or for all but a hundredth, are as good as that; for two thirds they are not
// (the root of 0.64 is 0.8).
func TestLoadShareGoesByHeat(t *testing.T) {
	const heat = `
fuses:
  heat fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: keyed feed, wire: {size: 4 mm², length: 100 mm}}
loads:
  heater: {current: 17 A, rated at: 13 V, behaves: constant power, figure: highest, TIMES, at: battery tray, fed by: heat fuse, wire: {size: 4 mm², length: 300 mm}, returns to: battery negative, return wire: {size: 4 mm², length: 300 mm}}
places: {battery tray: {ambient: 23 °C}}
runs: []
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 30 A, spare: 20 A, supervised: no}
`
	gravities(t, "fuse-under-load", heat, "TIMES", map[string]finding.Severity{
		"duty: 100 %": finding.Fault, "duty: 99 %": finding.Fault, "duty: 60 %": 0,
		"on for: 10 min, every: 10 min": finding.Fault, "on for: 6 min, every: 10 min": 0, "on for: 3 h, every: 10 h": finding.Fault,
	})
}

// A lug of 120 A on 16 mm² bears 150 A for a minute in ten, since the wire is no hotter
// then than with 120 A for good; for good it does not.
func TestTerminalsBearForATime(t *testing.T) {
	const winch = `
battery: {chemistry: AGM, capacity: 60 Ah, rate: 10 h, resistance: 3 mΩ, at: battery tray}
fuses:
  winch fuse: {type: marine strip, rating: 300 A, at: battery tray, fed by: battery, wire: {size: 16 mm², length: 100 mm, ends: {from: ring M8, to: ring M8}}}
loads:
  winch: {current: 150 A, rated at: 12 V, behaves: constant power, figure: highest, TIMES own switch: yes, at: battery tray, fed by: winch fuse, wire: {size: 16 mm², length: 300 mm}, returns to: battery negative, return wire: {size: 16 mm², length: 300 mm}}
`
	for _, c := range []struct {
		amps, times string
		want        finding.Severity
	}{
		{"150 A", "", finding.Fault}, {"150 A", "on for: 1 min, every: 10 min,", 0}, {"150 A", "on for: 9 min, every: 10 min,", finding.Fault},
		{"160 A", "on for: 5 s, every: 10 min,", 0}, {"230 A", "on for: 5 s, every: 10 min,", finding.Fault}, // 180 A at the most
	} {
		if got := gravest(t, replace(winch, "150 A, rated", c.amps+", rated", "TIMES", c.times), "terminal-overload"); got != c.want {
			t.Errorf("%s %q: %s, want %s", c.amps, c.times, got, c.want)
		}
	}
}

// A relay contact that is rated 22 A for motors and 40 A for what it carries: advice up to a
// third above the rating for motors, danger beyond.
func TestMotorOnRelayAtTheEdge(t *testing.T) {
	const text = `
fuses:
  motor fuse: {type: blade E, rating: 60 A, at: battery tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}, stays live: "a test"}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  motor relay: {form: mini make, at: battery tray, fed by: motor fuse, wire: {size: 16 mm², length: 100 mm}, coil: {fed by: pilot, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  the motor: {current: AMPS, rated at: 14 V, behaves: BEHAVES, at: rear, fed by: motor relay, wire: {size: 16 mm²}, returns to: frame, return wire: {size: 16 mm²}}
situations:
  running: {engine: cruise, on: [the motor]}
places:
  battery tray: {ambient: 23 °C}
  rear: {ambient: 23 °C}
charging: {regulated: 14.3 V, output: {1300 rpm: 90 A, 3000 rpm: 90 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`
	gravities(t, "relay-contact-overload", text, "AMPS | BEHAVES", map[string]finding.Severity{"21 A | motor": 0, "29 A | motor": finding.Advice, "30 A | motor": finding.Danger, "41 A | constant power": finding.Danger})
}

// A battery switch of 100 A, 50 A for motors, before a motor of 90 A that a relay behind it turns on
// carries it; with nothing behind it, it switches it.
func TestBatterySwitchBeforeARelay(t *testing.T) {
	const text = `
fuses:
  motor fuse: {type: strip SF51, rating: 150 A, at: battery tray, fed by: battery, wire: {size: 35 mm², length: 100 mm}, stays live: "a test"}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
switches:
  isolator: {type: battery switch 100 A, at: battery tray, fed by: motor fuse, wire: {size: 35 mm², length: 100 mm}}
relays:
  motor relay: {form: contactor 400 A, at: battery tray, fed by: isolator, wire: {size: 35 mm², length: 100 mm}, coil: {fed by: pilot, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {current: AMPS, behaves: motor, at: battery tray, fed by: FEED, wire: {size: 35 mm², length: 300 mm}, returns to: battery negative, return wire: {size: 35 mm², length: 300 mm}, stays live: "a test"}
`
	gravities(t, "switch-overload", text, "FEED | AMPS", map[string]finding.Severity{"isolator | 49 A": 0, "isolator | 90 A": finding.Fault, "motor relay | 80 A": 0, "motor relay | 101 A": finding.Fault})
}
