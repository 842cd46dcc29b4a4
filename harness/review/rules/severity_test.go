package rules_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// gravest is the gravest finding of a rule in an example; 0 without one.
func gravest(t *testing.T, snippet, rule string) (most finding.Severity) {
	t.Helper()
	for _, f := range assess(t, "severity.yaml", []byte(example.Design(snippet))) {
		if f.Rule == rule {
			most = max(most, f.Severity)
		}
	}
	return most
}

// A wire that leads to a fuse of its own is a tail within the practice's distance
// alone: there a short that melts it is advice, beyond it a danger, and a longer
// distance of the design from the battery changes nothing.
func TestTailsAreNotSilent(t *testing.T) {
	const behind = `
limits: {fuse distance: 5 m}
fuses:
  main: {type: blade C, rating: 40 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}, stays live: "a test"}
  own: {type: blade C, rating: 5 A, at: rear, fed by: main, wire: {size: 0.5 mm², LENGTH}, stays live: "a test"}
loads:
  lamp: {power: 20 W, behaves: resistor, at: rear, fed by: own, wire: {length: 300 mm}, returns to: frame, own switch: yes, stays live: "a test"}
battery: {chemistry: AGM, capacity: 60 Ah, rate: 10 h, resistance: 5 mΩ, at: battery tray}
`
	for _, c := range []struct {
		length, rule string
		want         finding.Severity
	}{
		{"length: 4 m", "fuse-over-wire", finding.Danger},
		{"length: 1 m, sheathed: yes", "fuse-over-wire", 0},
		{"length: 1.02 m, sheathed: yes", "fuse-over-wire", finding.Danger},
	} {
		if got := gravest(t, replace(behind, "LENGTH", c.length), c.rule); got != c.want {
			t.Errorf("%s: %s is %s, want %s", c.length, c.rule, got, c.want)
		}
	}
	strip := replace(behind, "LENGTH", "length: 1 m, sheathed: yes", "blade C, rating: 40 A", "strip SF51, rating: 100 A", "size: 6 mm²", "size: 25 mm²")
	if got := gravest(t, strip, "short-overheats-wire"); got != finding.Advice {
		t.Errorf("a short that melts a tail is %s", got)
	}
}

// Two fuses of 20 A that meet hold 40 A for good: 2.5 mm² behind them is a danger at
// 1.5 times of 25 A, 6 mm² is none. Behind a common fuse of 20 A they let through 20 A, and
// of a change-over only one is closed at a time.
func TestFeedsThatMeetAddUp(t *testing.T) {
	const meet = `
fuses:
  main: {type: blade C, rating: MAIN, at: battery tray, fed by: battery, wire: {size: 10 mm², length: 100 mm}, stays live: "a test"}
  left: {type: blade C, rating: 20 A, at: battery tray, fed by: LEFT, wire: {size: 10 mm², length: 100 mm}, stays live: "a test"}
  right: {type: blade C, rating: 20 A, at: battery tray, fed by: RIGHT, wire: {size: 10 mm², length: 100 mm}, stays live: "a test"}
splices:
  joint: {at: battery tray, fed by: [left, right], wire: {size: 6 mm², length: 100 mm}}
loads:
  heater: {power: 100 W, behaves: resistor, at: rear, fed by: joint, wire: {size: SIZE}, returns to: battery negative, return wire: {size: 10 mm²}, own switch: yes, stays live: "a test"}
`
	for _, c := range []struct {
		name, main, left, right, size string
		want                          finding.Severity
	}{
		{"apart, thin", "40 A", "battery", "battery", "1.5 mm²", finding.Danger},
		{"apart, thick", "40 A", "battery", "battery", "6 mm²", 0},
		{"below one of 20 A", "20 A", "main", "main", "2.5 mm²", 0},
		{"below one of 40 A", "40 A", "main", "main", "1.5 mm²", finding.Danger},
		{"one below another of 5 A", "5 A", "main", "battery", "2.5 mm²", 0},
	} {
		text := replace(meet, "MAIN", c.main, "LEFT", c.left, "RIGHT", c.right, "SIZE", c.size)
		if got := gravest(t, text, "fuse-over-wire"); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// A bilge pump is fed by its float and by hand, each behind a fuse: advice. Of another
// load, or with one feed bare, it is a danger.
func TestPumpOnFloatAndHand(t *testing.T) {
	const pump = `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
fuses:
  float fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
  hand fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
  big fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
switches:
  float switch: {type: float switch 15 A, at: rear, fed by: float fuse}
  hand switch: {type: toggle 20 A, at: rear, fed by: HAND}
loads:
  the pump: {type: TYPE, at: rear, fed by: [float switch, hand switch], wire: {length: 400 mm}, returns to: battery negative, stays live: "must run unattended"}
`
	for _, c := range []struct {
		kind, hand string
		want       finding.Severity
	}{
		{"bilge pump", "hand fuse", finding.Advice},
		{"fresh water pump", "hand fuse", finding.Danger},
		{"bilge pump", "battery", finding.Danger},
		{"bilge pump", "big fuse", finding.Danger}, // which the wires from the float do not bear
	} {
		if got := gravest(t, replace(pump, "TYPE", c.kind, "HAND", c.hand), "back-feed"); got != c.want {
			t.Errorf("%s by hand from %s: %s, want %s", c.kind, c.hand, got, c.want)
		}
	}
}

// Vehicles: bare, 7 in as on boats are free, 300 mm advice, 1 m a fault. Sheathed 40 in
// are free and twice that a fault; on boats twice 7 in, and sheathed from the battery's post
// 72 in advice, but where petrol vapour can gather.
func TestFuseDistances(t *testing.T) {
	const lamp = `
practice: PRACTICE
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {LENGTH}, stays live: "a test"}
`
	for _, c := range []struct {
		practice, length string
		want             finding.Severity
	}{
		{"motorcycle", "length: 178 mm", 0},
		{"motorcycle", "length: 179 mm", finding.Advice},
		{"motorcycle", "length: 300 mm", finding.Advice},
		{"motorcycle", "length: 301 mm", finding.Fault},
		{"off-road", "length: 1 m", finding.Fault},
		{"off-road", "length: 1001 mm", finding.Danger},
		{"off-road", "length: 1016 mm, sheathed: yes", 0},
		{"off-road", "length: 1017 mm, sheathed: yes", finding.Fault},
		{"off-road", "length: 2033 mm, sheathed: yes", finding.Danger},
		{"marine", "length: 179 mm", finding.Fault},
		{"marine", "length: 356 mm", finding.Fault},
		{"marine", "length: 357 mm", finding.Danger},
		{"marine", "length: 1016 mm, sheathed: yes", 0},
		{"marine", "length: 1017 mm, sheathed: yes", finding.Advice},
		{"marine", "length: 1829 mm, sheathed: yes", finding.Advice},
		{"marine", "length: 1830 mm, sheathed: yes", finding.Fault},
		{"marine", "length: 2032 mm, sheathed: yes", finding.Fault},
		{"marine", "length: 2033 mm, sheathed: yes", finding.Danger},
		{"marine with petrol", "length: 1016 mm, sheathed: yes", 0},
		{"marine with petrol", "length: 1017 mm, sheathed: yes", finding.Fault},
		{"marine with petrol", "length: 2033 mm, sheathed: yes", finding.Danger},
	} {
		practice, petrol := strings.CutSuffix(c.practice, " with petrol")
		places := ""
		if petrol {
			places = "places:\n  battery tray: {ambient: 40 °C}\n  rear: {ambient: 35 °C, petrol vapour: yes}\n"
		}
		if got := gravest(t, places+replace(lamp, "PRACTICE", practice, "LENGTH", c.length), "fuse-too-far"); got != c.want {
			t.Errorf("%s, %s: %s, want %s", c.practice, c.length, got, c.want)
		}
	}
}

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
	for times, want := range map[string]finding.Severity{
		"duty: 100 %": finding.Fault, "duty: 99 %": finding.Fault, "duty: 60 %": 0,
		"on for: 10 min, every: 10 min": finding.Fault, "on for: 6 min, every: 10 min": 0, "on for: 3 h, every: 10 h": finding.Fault,
	} {
		if got := gravest(t, replace(heat, "TIMES", times), "fuse-under-load"); got != want {
			t.Errorf("%s: %s, want %s", times, got, want)
		}
	}
}

// The library's navigation unit has a lead of 0.5 mm² and 5 A at most, as is usual: on
// its own 5 A it is silent, above that advice, and above 1.5 times of what the lead may
// carry a danger, since a short burns it. The maker's own largest fuse is a fault.
func TestThinLeadsOfTheLibrary(t *testing.T) {
	const unit = `
fuses:
  unit fuse: {type: blade C, rating: FUSE, at: battery tray, fed by: keyed feed, wire: {size: 6 mm², length: 100 mm}}
loads:
  the unit: {type: navigation unit, OWN at: rear, fed by: unit fuse, wire: {size: 6 mm²}, returns to: frame}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 60 A, spare: 6 A, supervised: no}
`
	for _, c := range []struct {
		fuse, own string
		want      finding.Severity
	}{
		{"5 A", "", 0}, {"7.5 A", "", finding.Advice}, {"15 A", "", finding.Advice}, {"30 A", "", finding.Danger},
		{"7.5 A", "maximum fuse: 7.5 A,", 0}, {"10 A", "maximum fuse: 7.5 A,", finding.Fault},
		{"30 A", "maximum fuse: 30 A, lead: {size: 6 mm²},", 0},
	} {
		if got := gravest(t, replace(unit, "FUSE", c.fuse, "OWN", c.own), "fuse-over-accessory"); got != c.want {
			t.Errorf("%s %s: %s, want %s", c.fuse, c.own, got, c.want)
		}
	}
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

// What tolerances alone break of a limit for the conductors is no word. Of the whole drop, two thirds of it in contacts
// and fuses, 8.34 mV a watt are lost at nominal, so that it passes 3 % of 12 V from 43.2 W on, as advice, and one and a
// half times that from 64.7 W on, a fault; 36 W are likely to lose 3.1 %.
func TestDropOfTheWorstCaseIsNoWord(t *testing.T) {
	const lamp = `
battery: {chemistry: AGM, capacity: 60 Ah, rate: 10 h, resistance: 5 mΩ, at: battery tray}
loads:
  tail lamp: {power: POWER, behaves: resistor, critical: yes, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: battery negative}
`
	for power, want := range map[string]finding.Severity{"10 W": 0, "36 W": 0, "43 W": 0, "44 W": finding.Advice, "64 W": finding.Advice, "66 W": finding.Fault} {
		if got := gravest(t, replace(lamp, "POWER", power), "voltage-drop"); got != want {
			t.Errorf("%s: %s, want %s", power, got, want)
		}
	}
}

// The rear is 600 mm away: a wire a millimetre shorter is a question, one below a tenth a
// slip. By way of a bracket, 500 mm and 100 mm, it may be as near as 400 mm.
func TestShorterThanTheWay(t *testing.T) {
	const lamp = `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm², length: LENGTH}, returns to: frame}
`
	for length, want := range map[string]finding.Severity{"600 mm": 0, "599 mm": finding.Advice, "60 mm": finding.Advice, "59 mm": finding.Fault} {
		if got := gravest(t, replace(lamp, "LENGTH", length), "wire-too-short"); got != want {
			t.Errorf("%s: %s, want %s", length, got, want)
		}
	}
	const round = `
places: {battery tray: {ambient: 40 °C}, rear: {ambient: 35 °C}, bracket: {ambient: 35 °C}}
runs:
  - {from: battery tray, to: bracket, length: 500 mm}
  - {from: bracket, to: rear, length: 100 mm}
`
	for length, want := range map[string]finding.Severity{"400 mm": 0, "399 mm": finding.Advice} {
		if got := gravest(t, round+replace(lamp, "LENGTH", length), "wire-too-short"); got != want {
			t.Errorf("%s round the bracket: %s, want %s", length, got, want)
		}
	}
	half := replace(round, "500 mm", "300 mm", "100 mm", "300 mm") // no nearer than nothing: a tenth of 600 mm
	for length, want := range map[string]finding.Severity{"61 mm": 0, "60 mm": finding.Advice, "20 mm": finding.Advice} {
		if got := gravest(t, half+replace(lamp, "LENGTH", length), "wire-too-short"); got != want {
			t.Errorf("%s by two runs alike: %s, want %s", length, got, want)
		}
	}
}

func replace(text string, pairs ...string) string { return strings.NewReplacer(pairs...).Replace(text) }

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
	for _, c := range []struct {
		amps, behaves string
		want          finding.Severity
	}{{"21 A", "motor", 0}, {"29 A", "motor", finding.Advice}, {"30 A", "motor", finding.Danger}, {"41 A", "constant power", finding.Danger}} {
		if got := gravest(t, replace(text, "AMPS", c.amps, "BEHAVES", c.behaves), "relay-contact-overload"); got != c.want {
			t.Errorf("%s of a %s: %s, want %s", c.amps, c.behaves, got, c.want)
		}
	}
}

// What a hand switch leaves on is a fault where something follows a key, and advice where
// nothing does or where it is on only while a button is held.
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
	for _, c := range []struct {
		loads, held string
		want        finding.Severity
	}{{"{machine: {power: 20 W, when: running}}", "no", finding.Fault}, {"{machine: {power: 20 W, when: always}}", "no", finding.Advice},
		{"{machine: {power: 20 W, when: running}}", "yes", finding.Advice}} {
		if got := gravest(t, replace(text, "LOADS", c.loads, "HELD", c.held, "TAPS", "{}"), "live-with-key-off"); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// What takes up water is no cover where it is wet on a boat.
func TestCoverInTheWet(t *testing.T) {
	for _, c := range []struct {
		practice, wet, cover string
		want                 finding.Severity
	}{{"marine", "yes", "braided glass sleeve", finding.Advice}, {"marine", "no", "braided glass sleeve", 0},
		{"marine", "yes", "silicone fire sleeve", 0}, {"motorcycle", "yes", "braided glass sleeve", 0}} {
		text := replace("practice: PRACTICE\nplaces:\n  battery tray: {ambient: 40 °C}\n  rear: {ambient: 35 °C, wet: WET}\nruns:\n"+
			"  - {from: battery tray, to: rear, length: 600 mm, cover: COVER}\n", "PRACTICE", c.practice, "WET", c.wet, "COVER", c.cover)
		if got := gravest(t, text, "cover-unsuited"); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
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
	for hours, want := range map[string]finding.Severity{"9.8 h": 0, "9.9 h": finding.Advice} {
		if got := gravest(t, replace(text, "HOURS", hours), "battery-flattened"); got != want {
			t.Errorf("%s: %s, want %s", hours, got, want)
		}
	}
}

// A lamp switched in its return is live as long as the battery switch is closed.
func TestSwitchedInReturnBehindTheBatterySwitch(t *testing.T) {
	const text = `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: FEED, wire: {size: 1 mm², length: 100 mm}}
switches:
  isolator: {type: battery switch 100 A, at: battery tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}}
  hand: {type: toggle 20 A, at: battery tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}}
  lamp switch: {rating: 5 A, at: rear, returns to: frame, return wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: lamp switch, return wire: {size: 1 mm², length: 200 mm}}
`
	for feed, want := range map[string]finding.Severity{"isolator": finding.Advice, "hand": 0, "battery": finding.Fault, "keyed feed": finding.Advice} {
		if got := gravest(t, replace(text, "FEED", feed), "switched-in-return"); got != want {
			t.Errorf("fed by %s: %s, want %s", feed, got, want)
		}
	}
}

// A wire to what is on for a minute at once is not left in an overload that hurts it after
// longer; of a motor of which only a duty is said nobody knows how long it runs.
func TestCurveOfWhatIsOnForATime(t *testing.T) {
	const text = `
fuses:
  lamp fuse: {type: strip SF51, rating: 250 A, at: battery tray, fed by: battery, wire: {size: 70 mm², length: 100 mm}}
loads:
  tail lamp: {current: 90 A, behaves: motor, TIMES, at: battery tray, fed by: lamp fuse, wire: {size: 35 mm², length: 3 m}, returns to: battery negative, return wire: {size: 35 mm², length: 3 m}, stays live: "a test"}
`
	for times, want := range map[string]finding.Severity{"on for: 1 min, every: 10 min": 0, "on for: 4 min, every: 40 min": finding.Advice,
		"duty: 10 %": finding.Advice, "duty: 10 %, own switch: yes": 0} {
		if got := gravest(t, replace(text, "TIMES", times), "fuse-wire-curve"); got != want {
			t.Errorf("%s: %s, want %s", times, got, want)
		}
	}
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
	for _, c := range []struct {
		says, before, feed string
		want               finding.Severity
	}{
		{"rating: 20 A", "master", "panel 1", finding.Advice},
		{"rating: 20 A, key operated: yes", "master", "panel 1", 0},
		{"type: key switch 10 A", "master", "panel 1", 0},
		{"type: toggle 20 A", "master", "panel 1", finding.Fault},
		{"rating: 20 A", "main", "master", finding.Fault},
	} {
		if got := gravest(t, strings.NewReplacer("SAYS", c.says, "BEFORE", c.before, "FEED", c.feed).Replace(text), "live-with-key-off"); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// A cranking circuit needs no fuse; what hangs on its cable besides does.
func TestCrankingCircuitIsUnfused(t *testing.T) {
	const text = `
relays:
  starter relay: {form: winch contactor 12 V, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 300 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  starter: {TYPE, at: rear, fed by: starter relay, wire: {size: 25 mm²}, returns to: battery negative, return wire: {size: 25 mm²}}
OTHER`
	for _, c := range []struct {
		of, other string
		want      finding.Severity
	}{
		{"type: starter motorcycle", "", 0},
		{"current: 120 A, behaves: motor", "", finding.Danger},
		{"type: starter motorcycle, current: 60 A", "", 0},
		{"type: starter motorcycle, current: 59 A", "", finding.Danger},
		{"type: starter motorcycle, on for: 60 s, every: 10 min", "", 0},
		{"type: starter motorcycle, on for: 61 s, every: 10 min", "", finding.Danger},
		{"type: starter motorcycle, behaves: resistor", "", finding.Danger},
		{"type: starter motorcycle", "  horn: {type: horn, at: rear, fed by: starter relay, returns to: frame}\n", finding.Danger},
	} {
		if got := gravest(t, strings.NewReplacer("TYPE", c.of, "OTHER", c.other).Replace(text), "unfused-conductor"); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
	thin := strings.NewReplacer("TYPE", "type: starter motorcycle", "OTHER", "", "25 mm²", "6 mm²").Replace(text)
	if got := gravest(t, thin, "unfused-conductor"); got != finding.Danger {
		t.Errorf("6 mm² is no starter cable: %s", got)
	}
}

// A warning lamp behind the key is switched to ground by what senses pressure or level, as all are: nothing is said of it.
// A hand's switch there, a pump, or a feed that is live with the key off is spoken of.
func TestWarningLampIsSwitchedToGround(t *testing.T) {
	const text = `
switches:
  sender: {TYPE, at: rear, returns to: frame, return wire: {size: 1 mm²}}
loads:
  thing: {LOAD, at: rear, fed by: FEED, wire: {size: 1 mm²}, returns to: sender, return wire: {size: 1 mm², length: 200 mm}}
`
	for _, c := range []struct {
		of, load, feed string
		want           finding.Severity
	}{
		{"type: pressure switch 10 A", "type: bulb 5 W", "keyed feed", 0},
		{"type: float switch 15 A", "power: 1 W, behaves: constant power, sign: LED", "keyed feed", 0},
		{"type: float switch 15 A", "power: 3 W, behaves: constant power, sign: horn", "keyed feed", 0},
		{"rating: 5 A", "type: bulb 5 W", "keyed feed", finding.Advice},
		{"type: float switch 15 A", "type: bilge pump", "keyed feed", finding.Advice},
		{"type: pressure switch 10 A", "type: bulb 5 W", "battery", finding.Fault},
	} {
		if got := gravest(t, strings.NewReplacer("TYPE", c.of, "LOAD", c.load, "FEED", c.feed).Replace(text), "switched-in-return"); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// The cable to an isolator from which the starter is fed needs no fuse, whatever branches off there: a branch is judged from
// where it leaves the starter cable, without a fuse a danger, and by how far off its first fuse is.
func TestBranchOfStarterCable(t *testing.T) {
	const text = `
switches:
  isolator: {type: battery switch 300 A, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 1.2 m}}
fuses:
  house fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: FEED, wire: {size: 2.5 mm², length: LENGTH}}
loads:
  starter: {type: starter motorcycle, at: rear, fed by: isolator, wire: {size: 25 mm²}, returns to: battery negative, return wire: {size: 25 mm²}}
  horn: {type: horn, at: rear, fed by: HORN, wire: {size: 2.5 mm²}, returns to: frame}
`
	for _, c := range []struct {
		feed, length, horn string
		want               []string // rule, severity and wire
	}{
		{"isolator", "150 mm", "house fuse", nil},
		{"starter", "150 mm", "house fuse", nil},
		{"isolator", "400 mm", "house fuse", []string{"fuse-too-far fault house fuse"}},
		{"isolator", "1.1 m", "house fuse", []string{"fuse-too-far danger house fuse"}},
		{"isolator", "150 mm", "isolator", []string{"unfused-conductor danger horn"}},
	} {
		var got []string
		for _, f := range assess(t, "branch.yaml", []byte(example.Design(strings.NewReplacer("FEED", c.feed, "LENGTH", c.length, "HORN", c.horn).Replace(text)))) {
			if f.Rule == "unfused-conductor" || f.Rule == "fuse-too-far" {
				got = append(got, f.Rule+" "+f.Severity.String()+" "+f.Part)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s, %s, horn from %s: %q, want %q", c.feed, c.length, c.horn, got, c.want)
		}
	}
}

// A joint of three wires that the design names is judged in a wet place; of one left to the
// tool nobody said how it is made.
func TestOpenJointInTheWet(t *testing.T) {
	const text = `
places: {battery tray: {ambient: 40 °C}, rear: {ambient: 35 °C, wet: yes}}
splices: {joint: {at: rear, fed by: lamp fuse, wire: {size: 1 mm²TO}}}
loads:
  tail lamp: {type: LED tail lamp, at: rear, fed by: joint, wire: {size: 1 mm², length: 300 mmFROM}, plug: sealed 1.5, returns to: frame}
  stop lamp: {type: LED tail lamp, at: rear, fed by: joint, wire: {size: 1 mm², length: 300 mmFROM}, plug: sealed 1.5, returns to: frame}
`
	for kind, want := range map[string]finding.Severity{"open-barrel splice 6 mm²": finding.Fault, "": 0} {
		to, from := "", ""
		if kind != "" {
			to, from = ", ends: {to: "+kind+"}", ", ends: {from: "+kind+"}"
		}
		if got := gravest(t, strings.NewReplacer("TO", to, "FROM", from).Replace(text), "unsealed-in-wet-place"); got != want {
			t.Errorf("%q: %s, want %s", kind, got, want)
		}
	}
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
	for _, c := range []struct {
		practice, other string
		want            finding.Severity
	}{{"off-road", "", finding.Advice}, {"off-road", second, 0}, {"marine", "", 0}} {
		if got := gravest(t, strings.NewReplacer("PRACTICE", c.practice, "OTHER", c.other).Replace(text), "live-with-key-off"); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
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
	for kind, want := range map[string]finding.Severity{"battery switch 100 A": 0, "toggle 20 A": finding.Fault, "key switch 10 A": 0} {
		if got := gravest(t, replace(text, "KIND", kind), "live-with-key-off"); got != want {
			t.Errorf("%s: %s, want %s", kind, got, want)
		}
	}
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
	for _, c := range []struct {
		feed, amps string
		want       finding.Severity
	}{{"isolator", "49 A", 0}, {"isolator", "90 A", finding.Fault}, {"motor relay", "80 A", 0}, {"motor relay", "101 A", finding.Fault}} {
		if got := gravest(t, replace(text, "FEED", c.feed, "AMPS", c.amps), "switch-overload"); got != c.want {
			t.Errorf("%s by the %s: %s, want %s", c.amps, c.feed, got, c.want)
		}
	}
}
