package rules_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// TestStudHoldsByHand counts ring terminals below, at and above the limit, ashore and
// afloat.
func TestStudHoldsByHand(t *testing.T) {
	for _, c := range []struct {
		practice string
		rings    int
		want     bool
	}{{"motorcycle", 4, false}, {"motorcycle", 5, false}, {"motorcycle", 6, true},
		{"marine", 4, false}, {"marine", 5, true}} {
		text := "practice: " + c.practice + "\nloads:\n"
		for i := range c.rings {
			text += fmt.Sprintf("  lamp %d: {power: 1 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame}\n", i)
		}
		if got := gives(t, text, "crowded-stud"); got != c.want {
			t.Errorf("%d rings, %s: %v, want %v", c.rings, c.practice, got, c.want)
		}
	}
}

// A post of a further battery holds as many as the first one's: its own cable counts.
func TestStudsOfFurtherBattery(t *testing.T) {
	for lamps, want := range map[int]bool{3: false, 4: true} {
		text := "practice: marine\nbatteries: {house: {chemistry: AGM, capacity: 90 Ah, at: rear, fed by: link, returns to: battery negative}}\n" +
			"fuses:\n  link: {type: blade C, rating: 5 A, at: rear, fed by: battery}\n  own: {type: blade C, rating: 5 A, at: rear, fed by: house}\nloads:\n"
		for i := range lamps {
			text += fmt.Sprintf("  lamp %d: {power: 1 W, behaves: resistor, at: rear, fed by: own, returns to: house negative}\n", i)
		}
		if got := gives(t, text, "crowded-stud"); got != want {
			t.Errorf("%d lamps and the cable: %v, want %v", lamps, got, want)
		}
	}
}

// TestStrapSavesStud: a stud on what moves is in order with a strap, and one that
// nothing returns to needs none.
func TestStrapSavesStud(t *testing.T) {
	const text = `
places:
  battery tray: {ambient: 40 °C}
  rear: {ambient: 35 °C, moves: yes}
grounds:
  flap bolt: {kind: frame stud, at: rear, STRAP}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: GROUND}
`
	for _, c := range []struct {
		strap, ground string
		want          bool
	}{{"limit: 20 A", "flap bolt", true}, {"limit: 20 A", "battery negative", false},
		{"returns to: battery negative, wire: {size: 6 mm²}", "flap bolt", false}} {
		s := strings.NewReplacer("STRAP", c.strap, "GROUND", c.ground).Replace(text)
		if got := gives(t, s, "stud-on-moving-part"); got != c.want {
			t.Errorf("%s, %s: %v, want %v", c.strap, c.ground, got, c.want)
		}
	}
}

// TestCoilHeldByHand: a coil for 60 s below, at and above that, for good, and let go.
func TestCoilHeldByHand(t *testing.T) {
	const text = `
switches:
  button: {rating: 10 A, at: rear, fed by: lamp fuse, momentary: MOMENTARY}
relays:
  lamp relay: {form: short-time contactor 150 A 12 V, at: battery tray, fed by: lamp fuse, coil: {fed by: button, returns to: frame, suppressed by: diode}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, returns to: frame TIME}
`
	for _, c := range []struct {
		momentary, time string
		want            bool
	}{{"no", ", on for: 59 s", false}, {"no", ", on for: 60 s", false}, {"no", ", on for: 61 s", true},
		{"no", "", true}, {"yes", ", on for: 10 s", false}, {"yes", "", true}} {
		s := strings.NewReplacer("MOMENTARY", c.momentary, " TIME", c.time).Replace(text)
		if got := gives(t, s, "coil-held-too-long"); got != c.want {
			t.Errorf("momentary %s%s: %v, want %v", c.momentary, c.time, got, c.want)
		}
	}
}

// TestHeldLoads: what is held by hand as a rule, what is on for a time, and a relay
// that holds itself are no lasting loads on a momentary switch.
func TestHeldLoads(t *testing.T) {
	const direct = `
switches:
  button: {rating: 10 A, at: rear, fed by: lamp fuse, momentary: yes}
loads:
  lamp: {power: 5 W, at: rear, fed by: button, returns to: frame, LOAD}
`
	const holding = `
switches:
  button: {rating: 10 A, at: rear, fed by: lamp fuse, momentary: yes}
relays:
  hold: {form: mini make, at: battery tray, fed by: lamp fuse, coil: {fed by: [button, hold], returns to: frame, suppressed by: diode}}
loads:
  lamp: {power: 5 W, at: rear, fed by: hold, returns to: frame, LOAD}
`
	for _, c := range []struct {
		text, load string
		want       bool
	}{{direct, "behaves: filament lamp", true}, {direct, "behaves: filament lamp, on for: 5 s", false},
		{direct, "behaves: motor", false}, {direct, "behaves: constant power, symbol: horn", false},
		{direct, "behaves: resistor", false}, {holding, "behaves: filament lamp", false}} {
		if got := gives(t, strings.ReplaceAll(c.text, "LOAD", c.load), "lasting-load-on-momentary"); got != c.want {
			t.Errorf("%s: %v, want %v", c.load, got, c.want)
		}
	}
}

// TestResistiveGroundByHand: 24 W at 12 V through the frame, near 2.1 A at 12.6 V and
// more: the limit of 10 %, 1.2 V, lies at some 0.56 Ω; of a critical load 0.36 V at 0.16 Ω.
func TestResistiveGroundByHand(t *testing.T) {
	const text = `
grounds:
  frame: {kind: frame stud, at: battery tray, frame resistance: OHM}
loads:
  tail lamp: {power: 24 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame, critical: CRITICAL}
`
	for _, c := range []struct {
		ohm, critical string
		want          bool
	}{{"0.4 Ω", "no", false}, {"0.65 Ω", "no", true}, {"0.13 Ω", "yes", false}, {"0.2 Ω", "yes", true}} {
		s := strings.NewReplacer("OHM", c.ohm, "CRITICAL", c.critical).Replace(text)
		if got := gives(t, s, "resistive-ground"); got != c.want {
			t.Errorf("%s, critical %s: %v, want %v", c.ohm, c.critical, got, c.want)
		}
	}
}

// TestBlockedMotorByHand: a fan of 3 A draws 4 times that when blocked, 12 A. A fuse of
// 10 A carries 11 A for good and opens; of 15 A it does not, and is 5 times the 3 A.
// Of 3.75 A, blocked 11.25 A, 15 A is four times and taken as chosen for the start.
func TestBlockedMotorByHand(t *testing.T) {
	const text = `
fuses:
  fan fuse: {type: blade C, rating: RATING, at: battery tray, fed by: battery}
switches:
  switch: {rating: 20 A, at: rear, fed by: fan fuse, momentary: HELD}
loads:
  fan: {current: CURRENT, rated at: 12 V, inrush: {peak: PEAK, time: 200 ms}, at: rear, fed by: switch, returns to: frame, LOAD}
`
	for _, c := range []struct {
		rating, current, peak, load, held string
		want                              bool
	}{{"10 A", "3 A", "4", "behaves: motor", "no", false}, {"15 A", "3 A", "4", "behaves: motor", "no", true},
		{"15 A", "3.75 A", "3", "behaves: motor", "no", false}, {"15 A", "3.7 A", "3", "behaves: motor", "no", true},
		{"15 A", "3 A", "4", "behaves: resistor", "no", false}, {"15 A", "3 A", "4", "behaves: motor, symbol: horn", "no", false},
		{"15 A", "3 A", "4", "behaves: motor, protected motor: yes", "no", false},
		{"15 A", "3 A", "4", "behaves: motor, on for: 300 s", "no", false},
		{"15 A", "3 A", "4", "behaves: motor, on for: 301 s", "no", true},
		{"15 A", "3 A", "4", "behaves: motor, duty: 40 %", "no", true}, {"15 A", "3 A", "4", "behaves: motor", "yes", false}} {
		s := strings.NewReplacer("RATING", c.rating, "CURRENT", c.current, "PEAK", c.peak, "LOAD", c.load, "HELD", c.held).Replace(text)
		if got := gives(t, s, "motor-never-opens-fuse"); got != c.want {
			t.Errorf("%s behind %s, %s, held %s: %v, want %v", c.current, c.rating, c.load, c.held, got, c.want)
		}
	}
}

// TestReturnFuseOpens: a fuse in the only return opens for a stalled motor as one in the
// feed does; past one in one of two returns the current finds the other, whichever is
// named first.
func TestReturnFuseOpens(t *testing.T) {
	const text = `
grounds:
  stud: {kind: frame stud, at: rear, limit: 60 A, frame resistance: 1 mΩ}
fuses:
  big: {type: blade E, rating: 40 A, at: battery tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}}
  back: {type: blade C, rating: 15 A, at: rear, returns to: battery negative, return wire: {size: 2.5 mm²}}
loads:
  fan: {current: 9 A, behaves: motor, inrush: {peak: 4, time: 100 ms}, own switch: yes, at: rear, stays live: x, fed by: big, wire: {size: 6 mm²}, returns to: RETURNS, return wire: {size: 2.5 mm²}}
`
	for returns, want := range map[string]bool{"back": false, "stud": true, "[back, stud]": true, "[stud, back]": true} {
		if got := gives(t, strings.ReplaceAll(text, "RETURNS", returns), "motor-never-opens-fuse"); got != want {
			t.Errorf("returns to %s: %v, want %v", returns, got, want)
		}
	}
}

// TestReturnsInAnyOrder: the order in which parallel returns are named decides nothing.
func TestReturnsInAnyOrder(t *testing.T) {
	const text = `
places: {battery tray: {ambient: 70 °C}, rear: {ambient: 70 °C}}
grounds:
  stud: {kind: frame stud, at: rear, limit: 60 A, frame resistance: 1 mΩ}
fuses:
  big: {type: blade E, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}}
  back: {type: blade C, rating: 15 A, at: rear, returns to: battery negative, return wire: {size: 2.5 mm²}}
loads:
  fan: {current: 6.75 A, behaves: motor, inrush: {peak: 4, time: 100 ms}, own switch: yes, at: rear, stays live: x, fed by: big, wire: {size: 4 mm²}, returns to: RETURNS, return wire: {size: 4 mm²}}
`
	of := func(returns string) (list []string) {
		for _, f := range assess(t, "returns.yaml", []byte(example.Design(strings.ReplaceAll(text, "RETURNS", returns)))) {
			list = append(list, fmt.Sprint(f.Rule, f.Severity, f.Part))
		}
		slices.Sort(list)
		return list
	}
	a, b := of("[back, stud]"), of("[stud, back]")
	if len(a) < 3 || !slices.Equal(a, b) {
		t.Errorf("%v\n%v", a, b)
	}
}

// TestLampsApart: a lamp with a fuse of its own, a horn beside it, and a motor behind a
// further fuse leave it burning.
func TestLampsApart(t *testing.T) {
	const text = `
fuses:
  lamp fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: keyed feed}
  pump fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: FUSE}
loads:
  lamp: {power: 5 W, behaves: LAMP, at: rear, fed by: lamp fuse, returns to: frame}
  pump: {current: 2 A, rated at: 12 V, behaves: MOTOR, at: rear, fed by: FED, returns to: frame}
`
	for _, c := range []struct {
		lamp, motor, fuse, fed string
		want                   bool
	}{{"filament lamp, critical: yes", "motor", "keyed feed", "lamp fuse", true},
		{"filament lamp", "motor", "keyed feed", "lamp fuse", true},
		{"filament lamp", "motor", "keyed feed", "pump fuse", false},
		{"filament lamp", "constant power", "keyed feed", "lamp fuse", false},
		{"filament lamp, critical: yes", "motor, symbol: horn", "keyed feed", "lamp fuse", false},
		{"filament lamp, critical: yes", "motor", "keyed feed", "pump fuse", false},
		{"filament lamp, critical: yes", "motor", "lamp fuse", "pump fuse", false},
		{"filament lamp, critical: yes", "resistor", "keyed feed", "lamp fuse", false},
		{"filament lamp, critical: yes", "constant power", "keyed feed", "lamp fuse", true},
		{"constant power, symbol: LED, critical: yes", "constant power, symbol: LED", "keyed feed", "lamp fuse", false}} {
		s := strings.NewReplacer("LAMP", c.lamp, "MOTOR", c.motor, "FUSE", c.fuse, "FED", c.fed).Replace(text)
		if got := gives(t, s, "lamp-shares-motor-fuse"); got != c.want {
			t.Errorf("%+v: %v, want %v", c, got, c.want)
		}
	}
}

// TestListsAsWritten: lists of situations against what is on in them.
func TestListsAsWritten(t *testing.T) {
	const text = `
switches:
  pair switch: {rating: 20 A, at: rear, fed by: lamp fuse}
loads:
  lamp: {power: 5 W, behaves: resistor, at: rear, fed by: pair switch, returns to: frame, OWN}
  other: {power: 5 W, behaves: resistor, at: rear, fed by: pair switch, returns to: frame, own switch: yes}
  third: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, returns to: frame}
situations: {a: {engine: cruise, on: [lamp, other]}, b: {B}}
`
	for _, c := range []struct {
		own, b         string
		unlisted, dead bool
	}{{"own switch: yes", "engine: cruise, on: [other]", false, false},
		{"own switch: no", "engine: cruise, on: [other]", true, false},
		{"own switch: no", "on: [other]", true, false},
		{"own switch: no", "engine: cruise, on: [third]", false, false},
		{"stays live: parking lamp", "engine: cruise, on: [other]", false, false},
		{"own switch: yes", "key: off, on: [lamp]", false, true},
		{"own switch: yes", "key: off, on: all", false, false},
		{"own switch: yes", "key: off", false, false}} {
		s := strings.NewReplacer("OWN", c.own, "B}", c.b+"}").Replace(text)
		if got := gives(t, s, "on-but-not-listed"); got != c.unlisted {
			t.Errorf("%s, b %s: on but not listed %v, want %v", c.own, c.b, got, c.unlisted)
		}
		if got := gives(t, s, "listed-but-dead"); got != c.dead {
			t.Errorf("%s, b %s: listed but dead %v, want %v", c.own, c.b, got, c.dead)
		}
	}
}

// TestUnlistedAtAnchor: what nothing but the battery switch parts from the battery is on at
// anchor; what stays live by wish, and the float that is closed for the pump, are meant.
func TestUnlistedAtAnchor(t *testing.T) {
	const text = `
practice: marine
switches:
  battery switch: {type: battery switch 100 A, at: battery tray, fed by: battery}
  anchor switch: {rating: 10 A, at: rear, fed by: lamp fuse}
  float: {type: float switch 15 A, at: rear, fed by: PUMP}
fuses:
  lamp fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery switch}
  clock fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, WISH}
loads:
  plotter: {power: 10 W, behaves: constant power, at: rear, fed by: FED, returns to: frame, stays live: LIVE}
  anchor light: {power: 3 W, behaves: constant power, symbol: LED, at: rear, fed by: anchor switch, returns to: frame}
  pump: {current: 2 A, rated at: 12 V, behaves: motor, at: rear, fed by: float, returns to: frame}
situations:
  under way: {engine: cruise, on: [plotter, pump]}
  anchor: {KEY, on: [anchor light], closed: [CLOSED]}
`
	type edit map[string]string
	for _, c := range []struct {
		name string
		edit edit
		want bool
	}{
		{"engine stopped", edit{}, true},
		{"key off", edit{"KEY": "key: off"}, true},
		{"battery switch closed by hand", edit{"KEY": "key: off", "CLOSED": "battery switch"}, true},
		{"a switch of its own", edit{"FED": "lamp fuse, own switch: yes"}, false},
		{"stays live", edit{"LIVE": `"anchor alarm"`}, false},
		{"its feed stays live", edit{"FED": "clock fuse"}, false},
		{"live with the key off is said elsewhere", edit{"FED": "clock fuse", "WISH": `wire: {length: 100 mm}`, "KEY": "key: off"}, false},
		{"the float closed for the pump", edit{"FED": "lamp fuse, own switch: yes", "CLOSED": "float"}, false},
	} {
		with := edit{"KEY": "key: on", "LIVE": `""`, "FED": "lamp fuse", "CLOSED": "", "PUMP": "lamp fuse", "WISH": `stays live: "clock"`}
		for k, v := range c.edit {
			with[k] = v
		}
		var pairs []string
		for k, v := range with {
			pairs = append(pairs, k, v)
		}
		s := strings.ReplaceAll(strings.NewReplacer(pairs...).Replace(text), `, stays live: ""`, "")
		if got := gives(t, s, "on-but-not-listed"); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestLeftOpenForNothing: a fuse or way whose rating is left open and through which nothing
// draws is said, and the fuse of a way that feeds nothing; a spare way, and a single fuse of a stated rating, are meant.
func TestLeftOpenForNothing(t *testing.T) {
	const text = `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 20 A, spare: 15 A, supervised: no}
fuses:
  lamp fuse: {type: blade C, rating: auto, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
  other: {type: blade C, rating: RATING, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
blocks:
  block: {type: fuse block 6 way blade C, at: rear, fed by: keyed feed, wire: {size: 1.5 mm²}, ways: {1: {fuse: auto}, 2: WAY}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, at: rear, fed by: block 1, wire: {size: 1 mm²}, returns to: frame}
`
	for _, c := range []struct {
		rating, way string
		want        bool
	}{{"5 A", "spare", false}, {"5 A", "{fuse: 5 A}", true}, {"auto", "spare", true}, {"5 A", "{fuse: auto}", true}} {
		if got := gives(t, replace(text, "RATING", c.rating, "WAY", c.way), "part-unused"); got != c.want {
			t.Errorf("%+v: %v, want %v", c, got, c.want)
		}
	}
}

// TestStarterByHand: in mild air 12.79 V less 9.5 V at the posts over 126.6 A of starter, lamp and machine are 26.0 mΩ, of a battery that has 24.4 mΩ at the rated 25 °C; less the
// 7 V that the starter needs 45.7 mΩ, 42.9 mΩ as rated. In the cold 12.77 V less 7 V over 173.3 A are 33.3 mΩ, 24.0 mΩ as rated. A starter of the design has besides what its
// cables and switch lose. Of 3 Ah no new battery starts well with 120 A: that starter is likely a smaller one.
func TestStarterByHand(t *testing.T) {
	const own = `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: OHM mΩ, at: battery tray}
switches:
  button: {rating: 200 A, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 200 mm}, momentary: yes}
loads:
  starter: {type: starter motorcycle, at: battery tray, fed by: button, wire: {size: 25 mm², length: 400 mm}, returns to: frame, return wire: {size: 25 mm²}}
situations: {start: {on: [starter]}}
`
	const assumed = "\nbattery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: OHM mΩ, at: battery tray}\n"
	const named = assumed + "charging: {regulated: 14.3 V, output: {1300 rpm: 14 A, 6000 rpm: 28 A}, idle: 1300 rpm, cruise: 4000 rpm, hot derating: 0 %, starter: starter motorcycle}\n"
	small, smallNamed := strings.Replace(assumed, "12 Ah", "3 Ah", 1), strings.Replace(named, "12 Ah", "3 Ah", 1)
	for _, c := range []struct {
		text, ohm string
		want      finding.Severity
	}{
		{assumed, "12", 0}, {assumed, "24.3", 0}, {assumed, "24.5", finding.Advice}, {assumed, "42.7", finding.Advice}, {assumed, "43", finding.Fault}, {assumed, "500", finding.Fault},
		{named, "24", 0}, {named, "24.1", finding.Advice}, {named, "42.7", finding.Advice}, {named, "43", finding.Fault},
		{own, "12", 0}, {own, "41", finding.Advice}, {own, "46", finding.Fault}, {own, "300", finding.Fault},
		{small, "42.7", 0}, {small, "43", finding.Advice}, {small, "300", finding.Advice}, {smallNamed, "42.7", finding.Advice}, {smallNamed, "43", finding.Fault},
	} {
		if got := gravest(t, replace(c.text, "OHM", c.ohm), "starter-does-not-turn"); got != c.want {
			t.Errorf("%s mΩ: %s, want %s\n%s", c.ohm, got, c.want, c.text)
		}
	}
}

// What is said of a start: of the coldest that fails when a mild one is sound, else of the mild one.
func TestStarterSays(t *testing.T) {
	for ohm, want := range map[string]string{
		"24.5": "the battery turns the engine poorly: starter motorcycle, the usual one for such a battery, draws 120 A, which leaves the posts of the full battery, of 24.5 mΩ inside, 9.48 V; a sound start leaves 9.50 V",
		"60":   "the battery does not turn the engine: starter motorcycle, the usual one for such a battery, draws 120 A, which leaves the posts of the full battery, of 60 mΩ inside, 4.70 V; it needs 7.00 V",
	} {
		for _, f := range assess(t, "start.yaml", []byte(example.Design("\nbattery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: "+ohm+" mΩ, at: battery tray}\n"))) {
			if f.Rule == "starter-does-not-turn" && f.What != want {
				t.Errorf("%s mΩ: %q, want %q", ohm, f.What, want)
			}
		}
	}
}

// TestFlattenedByHand: of 12 Ah AGM the start reserve leaves some 4.8 Ah at 0.6. 3 A last
// longer than 1 h, 7 A do not; with the key on 8 A pass half an hour no more; afloat
// 8 h ask for some 0.5 A.
func TestFlattenedByHand(t *testing.T) {
	const text = `
practice: PRACTICE
loads:
  lamp: {power: POWER, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, returns to: frame}
fuses:
  lamp fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: battery, stays live: "lights the camp"}
situations: {camp: {KEY, on: [lamp]}}
`
	for _, c := range []struct {
		practice, power, key string
		want                 bool
	}{{"motorcycle", "36 W", "key: off", false}, {"motorcycle", "84 W", "key: off", true},
		{"motorcycle", "72 W", "key: on", false}, {"motorcycle", "120 W", "key: on", true},
		{"marine", "3 W", "key: off", false}, {"marine", "12 W", "key: off", true},
		{"motorcycle", "120 W", "engine: cruise", false}} {
		s := strings.NewReplacer("PRACTICE", c.practice, "POWER", c.power, "KEY", c.key).Replace(text)
		if got := gives(t, s, "battery-flattened"); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// TestRestartByHand: 3.5 A for an hour leave 12 Ah a start; two hours more do not.
func TestRestartByHand(t *testing.T) {
	const text = `
loads:
  lamp: {power: 42 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, returns to: frame}
rides:
  trip: {start charge: 100 %, legs: [{lasts: TIME, key: on, on: [lamp], ambient: 25 °C}, {lasts: 1 h, LAST, on: none, ambient: 25 °C}]}
situations: {under way: {engine: cruise, on: [lamp]}}
`
	for _, c := range []struct {
		time, last string
		want       bool
	}{{"50 min", "engine: cruise", false}, {"2 h", "engine: cruise", true}, {"2 h", "key: off", false}} {
		s := strings.NewReplacer("TIME", c.time, "LAST", c.last).Replace(text)
		if got := gives(t, s, "battery-flattened"); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// TestHotCoilByHand: 8 V × (1 + 0.00393·(T − 20)) is 10.4 V at 96 °C and 10.7 V at 105 °C;
// 10.5 V is the lowest supply. A form's own limit of 125 °C is relay-too-hot's.
func TestHotCoilByHand(t *testing.T) {
	const text = `
places: {battery tray: {ambient: 40 °C}, rear: {ambient: 35 °C}, engine: {ambient: HOT}}
runs:
  - {from: battery tray, to: rear, length: 600 mm}
  - {from: battery tray, to: engine, length: 600 mm}
wire: {insulation: ISO 6722 thin wall class D, size: 1 mm²}
relays:
  lamp relay: {form: mini make, at: engine, fed by: lamp fuse, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, returns to: frame}
situations: {a: {ENGINE}}
`
	for _, c := range []struct {
		hot, engine string
		want        bool
	}{{"96 °C", "engine: stopped", false}, {"105 °C", "engine: stopped", true}, {"105 °C", "engine: cruise", false},
		{"130 °C", "engine: stopped", false}} {
		s := strings.NewReplacer("HOT", c.hot, "ENGINE", c.engine).Replace(text)
		if got := gives(t, s, "coil-weak-when-hot"); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// gives tells whether an example gives an open finding of a rule.
func gives(t *testing.T, text, rule string) bool {
	t.Helper()
	for _, f := range open(assess(t, "made.yaml", []byte(example.Design(text)))) {
		if f.Rule == rule {
			return true
		}
	}
	return false
}
