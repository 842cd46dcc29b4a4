package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// TestSwitchedInReturn: live with the key off is a fault; behind the key, by a momentary
// switch or with a reason, advice; with a pole in the feed as well, or a battery switch,
// nothing. A lamp that the machine switches, by a door or a gear, is silent: it is said by the field, and a
// heater so switched is none.
func TestSwitchedInReturn(t *testing.T) {
	bad := rules.Find("switched-in-return").Bad
	hot := "fuses:\n  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}\n" + bad
	byDoor := strings.NewReplacer("rating: 5 A, at: rear", "rating: 5 A, machine operated: yes, at: rear", "behaves: resistor", "behaves: resistor, symbol: lamp").Replace(hot)
	for _, c := range []struct {
		name, src, old, new string
		want                finding.Severity
	}{
		{"behind the key", bad, "", "", finding.Advice},
		{"always live", hot, "", "", finding.Fault},
		{"always live, held", hot, "rating: 5 A, at: rear", "rating: 5 A, momentary: yes, at: rear", finding.Advice},
		{"with a reason", hot, "behaves: resistor", `behaves: resistor, stays live: "lights the step"`, finding.Advice},
		{"the reason at the switch", hot, "rating: 5 A, at: rear", `rating: 5 A, stays live: "lights the step", at: rear`, finding.Advice},
		{"a battery switch", hot, "rating: 5 A, at: rear", "type: battery switch 100 A, at: rear", 0},
		{"a lamp by hand", hot, "tail lamp: {power: 5 W, behaves: resistor", "tail lamp: {power: 5 W, behaves: resistor, symbol: lamp", finding.Fault},
		{"a lamp by a door", byDoor, "", "", 0},
		{"a lamp by a door, behind the key", strings.Replace(byDoor, "fed by: battery", "fed by: keyed feed", 1), "", "", 0},
		{"a lamp by a door of the library", byDoor, "rating: 5 A, machine operated: yes, at", "type: door switch 5 A, at", 0},
		{"a heater by a door", byDoor, "symbol: lamp", "symbol: heater", finding.Fault},
		{"two poles", hot, "tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse",
			"tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: pole", 0},
		{"two poles, one way", hot, "returns to: lamp switch", "returns to: [lamp switch, frame]", 0},
	} {
		src := c.src
		if strings.HasPrefix(c.name, "two poles") {
			src = strings.Replace(src, "switches:\n", "switches:\n  pole: {rating: 5 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}\n", 1)
		}
		if c.old != "" {
			src = strings.Replace(src, c.old, c.new, 1)
		}
		if got := gravest(t, src, "switched-in-return"); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// TestFuseInReturn: behind a fuse in the feed it is advice; where the feed has none a fault,
// beside the danger of the bare feed, which it does not mend.
func TestFuseInReturn(t *testing.T) {
	bad := rules.Find("fuse-in-return").Bad
	bare := strings.Replace(bad, "fed by: radio fuse", "fed by: battery", 1)
	for src, want := range map[string]finding.Severity{bad: finding.Advice, bare: finding.Fault} {
		if got := gravest(t, src, "fuse-in-return"); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	if got := gravest(t, bare, "unfused-conductor"); got != finding.Danger {
		t.Errorf("the bare feed: %s", got)
	}
}

// TestStrapShared: 2 × 25 W at 12 V take 4.9 A at 14 V, 2 × 26 W 5.1 A. One part alone is
// not said, whatever it takes.
func TestStrapShared(t *testing.T) {
	bad := rules.Find("strap-shared").Bad
	for _, c := range []struct {
		power string
		want  finding.Severity
	}{{"25 W", 0}, {"26 W", finding.Advice}} {
		if got := gravest(t, strings.ReplaceAll(bad, "30 W", c.power), "strap-shared"); got != c.want {
			t.Errorf("2 × %s: %s, want %s", c.power, got, c.want)
		}
	}
	alone := strings.Replace(strings.Replace(bad, "30 W", "70 W", 1), "returns to: flap bolt, return wire: {size: 1.5 mm², length: 100 mm}}\n  warm back",
		"returns to: flap bolt, return wire: {size: 1.5 mm², length: 100 mm}}\n  # ", 1)
	if alone == bad || strings.Count(alone, "returns to: flap bolt") != 2 {
		t.Fatal("the example has changed")
	}
	if got := gravest(t, alone, "strap-shared"); got != 0 {
		t.Errorf("one part alone: %s", got)
	}
}

// TestStrapCarriesAll: the strap of a moving part is judged by all that returns there, which
// no bearing beside it relieves; where the bearing's resistance is given, it takes its share.
func TestStrapCarriesAll(t *testing.T) {
	thin := strings.NewReplacer("size: 4 mm²", "size: 0.5 mm²", "power: 30 W", "power: 60 W").Replace(rules.Find("strap-shared").Bad)
	if got := gravest(t, thin, "wire-over-current"); got < finding.Fault {
		t.Errorf("a strap of 0.5 mm² under 11.7 A: %s", got)
	}
	relieved := strings.Replace(thin, "limit: 20 A, returns", "limit: 20 A, frame resistance: 1 mΩ, returns", 1)
	if got := gravest(t, relieved, "wire-over-current"); got != 0 {
		t.Errorf("beside 1 mΩ: %s", got)
	}
}

// A fuse in the return protects what is in series with it: 1 mm² before and behind 5 A
// bears the fault that 30 A of the feed would let through. What has a second way back, and
// a fuse that lets through more than the wire bears, help nothing.
func TestFuseInReturnProtects(t *testing.T) {
	const lamp = `
fuses:
  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  back fuse: {type: blade C, rating: RATING, at: battery tray, returns to: battery negative, return wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 30 A, at: rear, fed by: lamp fuse, wire: {size: 6 mm²}, returns to: BACK, return wire: {size: 1 mm²}, stays live: "marks the parked machine", own switch: true}
`
	for _, c := range []struct {
		rating, back string
		want         finding.Severity
	}{
		{"5 A", "back fuse", 0},
		{"30 A", "back fuse", finding.Danger},
		{"5 A", "[back fuse, frame]", finding.Danger},
	} {
		text := replace(lamp, "RATING", c.rating, "BACK", c.back)
		if got := gravest(t, text, "return-below-fuse"); got != c.want {
			t.Errorf("%s, %s: %s, want %s", c.rating, c.back, got, c.want)
		}
		if got := max(gravest(t, text, "short-overheats-wire"), gravest(t, text, "fuse-wire-curve")); c.want == 0 && got != 0 {
			t.Errorf("%s, %s: %s by a short inside the lamp", c.rating, c.back, got)
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
	gravities(t, "switched-in-return", text, "FEED", map[string]finding.Severity{"isolator": finding.Advice, "hand": 0, "battery": finding.Fault, "keyed feed": finding.Advice})
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
	gravities(t, "switched-in-return", text, "TYPE | LOAD | FEED", map[string]finding.Severity{
		"type: pressure switch 10 A | type: bulb 5 W | keyed feed":                               0,
		"type: float switch 15 A | power: 1 W, behaves: constant power, sign: LED | keyed feed":  0,
		"type: float switch 15 A | power: 3 W, behaves: constant power, sign: horn | keyed feed": 0,
		"rating: 5 A | type: bulb 5 W | keyed feed":                                              finding.Advice,
		"type: float switch 15 A | type: bilge pump | keyed feed":                                finding.Advice,
		"type: pressure switch 10 A | type: bulb 5 W | battery":                                  finding.Fault,
	})
}

// A coil that main beam alone feeds is live with that, not with the key, and nobody changes a lamp in it.
func TestSwitchedInReturnByWhatItIs(t *testing.T) {
	const text = `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 10 A, spare: 5 A, supervised: no}
  beam: {at: battery tray, hot: CONDITION, fuse: 10 A, spare: 2 A, supervised: no}
switches:
  rocker: {rating: 5 A, at: rear, returns to: frame, return wire: {size: 1 mm²}}
relays:
  spots: {form: mini make, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, coil: {fed by: beam, returns to: rocker, suppressed by: diode}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: spots, wire: {size: 1 mm²}, returns to: frame}
`
	for condition, want := range map[string]string{"main beam": "it is live with main beam while it is off", "key": "it is live with the key on while it is off"} {
		found := false
		for _, f := range assess(t, "coil.yaml", []byte(example.Design(strings.ReplaceAll(text, "CONDITION", condition)))) {
			if f.Rule == "switched-in-return" {
				if found = true; !strings.HasSuffix(f.What, want) || !strings.Contains(f.Why, "its coil") {
					t.Errorf("%s: %s; %s", condition, f.What, f.Why)
				}
			}
		}
		if !found {
			t.Errorf("%s: nothing found", condition)
		}
	}
}
