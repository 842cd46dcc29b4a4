package rules_test

import (
	"testing"

	"fusewright/harness/review/finding"
)

// What a hand switch leaves on is a fault where something follows a key, and advice where
// nothing does; what is on only while a button is held goes off by itself.
func TestLeftOnWithoutAKey(t *testing.T) {
	const text = `
vehicle loads: LOADS
taps: TAPS
fuses:
  fan fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
switches:
  fan switch: {rating: 10 A, momentary: HELD, at: battery tray, fed by: fan fuse, wire: {size: 1 mm², length: 100 mm}}
relays:
  fan relay: {form: mini make, at: battery tray, fed by: fan fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: fan switch, returns to: battery negative, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  fan: {current: 2 A, rated at: 12 V, behaves: motor, at: rear, fed by: fan relay, wire: {size: 1 mm²}, returns to: battery negative, return wire: {size: 1 mm²}}
situations:
  running: {engine: cruise, on: [fan]}
`
	gravities(t, "live-with-key-off", replace(text, "TAPS", "{}"), "LOADS | HELD", map[string]finding.Severity{"{machine: {power: 20 W, when: running}} | no": finding.Fault, "{machine: {power: 20 W, when: always}} | no": finding.Advice,
		"{machine: {power: 20 W, when: running}} | yes": 0})
}

// A switch before a fuse block of which only the rating is given may be the ignition key and
// is asked about; one said to be is, and one of another type, or before no block, is not.
func TestMayBeTheKey(t *testing.T) {
	const text = `
fuses:
  main: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
switches:
  master: {SAYS, at: battery tray, fed by: main, wire: {size: 1.5 mm², length: 100 mm}}
blocks:
  panel: {type: fuse block 4 way blade C, at: battery tray, fed by: BEFORE, wire: {size: 1.5 mm², length: 100 mm}, ways: {1: 5 A, 2: spare, 3: spare, 4: spare}}
loads:
  seat heater: {power: 20 W, behaves: resistor, at: rear, fed by: FEED, wire: {size: 1 mm²}, returns to: frame}
`
	gravities(t, "live-with-key-off", text, "SAYS | BEFORE | FEED", map[string]finding.Severity{
		"rating: 20 A | master | panel 1":                    finding.Advice,
		"rating: 20 A, key operated: yes | master | panel 1": 0,
		"type: key switch 10 A | master | panel 1":           0,
		"type: toggle 20 A | master | panel 1":               finding.Fault,
		"rating: 20 A | main | master":                       finding.Fault,
	})
}

// A battery switch for one load of a vehicle is what it is worked by and may be left on; one
// before several is the vehicle's.
func TestBatterySwitchForOneLoad(t *testing.T) {
	const text = `
practice: PRACTICE
fuses:
  main: {type: blade C, rating: 10 A, at: battery tray, fed by: battery}
switches:
  isolator: {type: battery switch 100 A, at: battery tray, fed by: main}
loads:
  seat heater: {power: 20 W, behaves: resistor, at: rear, fed by: isolator, returns to: battery negative}
OTHER`
	const second = "  fan: {power: 20 W, behaves: motor, at: rear, fed by: isolator, returns to: battery negative}\n"
	gravities(t, "live-with-key-off", text, "PRACTICE | OTHER", map[string]finding.Severity{"off-road | ": finding.Advice, "off-road | " + second: 0, "marine | ": 0})
}

// A relay that a battery switch energises is off with it; one that a toggle does is not.
func TestRelayBehindTheBatterySwitch(t *testing.T) {
	const text = `
fuses:
  main: {type: blade C, rating: 10 A, at: battery tray, fed by: battery}
switches:
  pilot: {type: KIND, at: battery tray, fed by: main}
relays:
  hot: {form: mini make 12 V, at: battery tray, fed by: main, coil: {fed by: pilot, returns to: frame, suppressed by: diode}}
loads:
  seat heater: {power: 20 W, behaves: resistor, at: rear, fed by: hot, returns to: frame}
  fan: {power: 20 W, behaves: motor, at: rear, fed by: hot, returns to: frame}
`
	gravities(t, "live-with-key-off", text, "KIND", map[string]finding.Severity{"battery switch 100 A": 0, "toggle 20 A": finding.Fault, "key switch 10 A": 0})
}

// A ride without the engine may leave a fifth of the charge in a lead battery: 12 Ah at the 10 h
// rate give the 0.96 A of 12 W at some 12.5 V for 9.8 h down to a fifth.
func TestDeepDischarge(t *testing.T) {
	const text = `
loads:
  tail lamp: {power: 12 W, rated at: 12 V, behaves: constant power, own switch: yes, stays live: "a test", at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
rides:
  stand: {start charge: 100 %, legs: [{lasts: HOURS, key: on, on: all, ambient: 25 °C}]}
`
	gravities(t, "battery-flattened", text, "HOURS", map[string]finding.Severity{"9.8 h": 0, "9.9 h": finding.Advice})
}

// What is left on by hand is judged by how soon the 12 Ah, 9.6 Ah of them above the start reserve,
// no longer start the engine: lamps are seen within 12 h, a heater is not before the next ride. One
// battery may have so much more that a lamp lasts the night.
func TestLeftOnByHowSoon(t *testing.T) {
	const text = `
battery: {chemistry: AGM, capacity: AH, rate: 20 h, resistance: 12 mΩ, at: battery tray}
limits: LIMITS
fuses:
  fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}
switches:
  rocker: {rating: 20 A, at: rear, fed by: fuse, wire: {size: 2.5 mm²}}
loads:
  x: {WHAT, rated at: 12 V, behaves: resistor, at: rear, fed by: rocker, wire: {size: 2.5 mm²}, returns to: frame}
`
	gravities(t, "live-with-key-off", text, "AH | WHAT | LIMITS", map[string]finding.Severity{
		"65 Ah | power: 110 W, symbol: lamp | {}":                       finding.Fault,
		"65 Ah | power: 10 W, symbol: lamp | {}":                        finding.Advice,
		"65 Ah | power: 10 W, symbol: heater | {}":                      finding.Fault,
		"65 Ah | power: 10 W, symbol: heater | {days to no start: 1 h}": finding.Advice,
		"12 Ah | power: 10 W, symbol: lamp | {}":                        finding.Fault,
		"12 Ah | power: 2 W, symbol: lamp | {}":                         finding.Advice,
	})
}
