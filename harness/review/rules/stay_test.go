package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// staying is a lamp behind a relay of which only the words differ.
func staying(relay, feed, coil string) string {
	return example.Design(`
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: ` + feed + `, wire: {size: 1 mm², length: 100 mm}}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: ` + coil + `, wire: {size: 1 mm², length: 100 mm}}
switches:
  push: {rating: 10 A, at: rear, fed by: pilot, wire: {size: 1 mm²}, momentary: yes}
relays:
  cabin: {` + relay + `, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  fan: {power: 5 W, behaves: resistor, at: rear, fed by: cabin, wire: {size: 1 mm²}, returns to: frame}
`)
}

const pulsed = ", coil: {fed by: push, wire: {size: 1 mm²}, returns to: frame, suppressed by: diode}"
const followed = ", coil: {fed by: pilot, wire: {size: 1 mm², length: 100 mm}, returns to: frame, suppressed by: diode}"

// TestRelaysThatStay: a latch left closed is live with the key off, a fault; a delay that runs
// out is not; a latch without a button before it is held.
func TestRelaysThatStay(t *testing.T) {
	for _, c := range []struct {
		name, src, rule, text string // rule "" = neither of the two
	}{
		{"a latch whose button is dead with the key off", staying("form: impulse relay"+pulsed, "battery", "keyed feed"),
			"live-with-key-off", "cabin can leave fan on, and nothing opens it, with the key off"},
		{"a latch whose button is live", staying("latches: yes"+pulsed, "battery", "battery"),
			"live-with-key-off", "cabin can leave fan on with the key off"},
		{"a latch behind the key", staying("latches: yes"+pulsed, "keyed feed", "keyed feed"), "", ""},
		{"a latch whose coil has no button", staying("latches: yes"+followed, "keyed feed", "keyed feed"),
			"coil-held-too-long", "the coil of cabin is held on continuously; its maximum is 1 min"},
		{"an off delay", staying("form: mini make, off delay: 30 s"+followed, "battery", "keyed feed"), "", ""},
		{"an on delay", staying("form: mini make, on delay: 5 s"+followed, "battery", "keyed feed"), "", ""},
	} {
		src := c.src
		if strings.Contains(src, followed) {
			src = strings.Replace(src, "switches:\n  push: {rating: 10 A, at: rear, fed by: pilot, wire: {size: 1 mm²}, momentary: yes}\n", "", 1)
		}
		said := false
		for _, f := range open(assess(t, "stay.yaml", []byte(src))) {
			switch f.Rule {
			case c.rule:
				said = said || strings.Contains(f.What, c.text)
			case "live-with-key-off", "coil-held-too-long", "relay-never-released", "relay-never-energised", "fed-by-nothing",
				"lasting-load-on-momentary", "on-but-not-listed", "listed-but-dead", "load-never-on", "situation-unsolved", "battery-flattened":
				t.Errorf("%s: %s: %s", c.name, f.Rule, f.What)
			}
		}
		if said != (c.rule != "") {
			t.Errorf("%s: %s not said as %q", c.name, c.rule, c.text)
		}
	}
}
