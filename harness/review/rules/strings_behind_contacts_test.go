package rules_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// strung is two lamps in series between a switch in their feed and one in their return, of which
// one may be left out; another part of the design switches in its return either way.
func strung(feed, back string) string {
	return example.Design(`
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
switches:
  hot side: {rating: 5 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  cold side: {rating: 5 A, at: rear, returns to: frame, return wire: {size: 1 mm²}}
loads:
  left: {power: 5 W, rated at: 6 V, behaves: resistor, at: rear, fed by: ` + feed + `, wire: {size: 1 mm², length: 200 mm}}
  right: {power: 5 W, rated at: 6 V, behaves: resistor, at: rear, in series with: left, wire: {size: 1 mm², length: 200 mm}, returns to: ` + back + `, return wire: {size: 1 mm², length: 200 mm}}
  horn: {power: 5 W, behaves: resistor, at: rear, fed by: hot side, wire: {size: 1 mm², length: 200 mm}, returns to: cold side, return wire: {size: 1 mm², length: 200 mm}}
`)
}

// Loads in series are left on together by whichever contact closes them, with the current of
// their string, 5 W / 6 V, once, and of the horn 5 W / 12 V; each is named with the contact in its return.
func TestStringsBehindContacts(t *testing.T) {
	for _, c := range []struct{ name, feed, back, rule, want string }{
		{"in the feed", "hot side", "frame", "live-with-key-off", "hot side can leave horn, left and right on with the key off, drawing about 1.25 A; a full battery no longer starts the engine after 3.82 h"},
		{"in the return", "lamp fuse", "cold side", "live-with-key-off", "cold side can leave left and right on with the key off, drawing about 833 mA; a full battery no longer starts the engine after 5.75 h"},
		{"in the return", "lamp fuse", "cold side", "switched-in-return", "left is switched only in its return, by cold side: it is live with the key off while it is off"},
	} {
		src := strung(c.feed, c.back)
		var got []string
		for _, f := range open(assess(t, "strung.yaml", []byte(src))) {
			if f.Rule == c.rule {
				got = append(got, f.What)
			}
		}
		if !slices.Contains(got, c.want) {
			t.Errorf("%s: %s\nwant %s", c.name, strings.Join(got, "\n"), c.want)
		}
	}
}

// A fan made slower by a resistor, 2.5 A × 2 Ω = 5 V of some 13: the library's 9 V are those of a fan
// by itself. A minimum that the design gives holds, and what takes the volts is named.
func TestSlowedByAResistor(t *testing.T) {
	const text = `
loads:
  dropper: {resistance: 2 Ω, rated at: 12 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm², length: 200 mm}}
  fan: {type: cooling fan, current: 2.5 A, rated at: 12 V, MORE, at: rear, in series with: dropper, wire: {size: 1 mm², length: 200 mm}, returns to: frame, return wire: {size: 1 mm², length: 200 mm}}
`
	for more, want := range map[string]finding.Severity{"figure: highest": 0, "critical: yes": finding.Danger, "minimum voltage: 11 V": finding.Fault} {
		src := replace(text, "MORE", more)
		if got := gravest(t, src, "load-undervoltage"); got != want {
			t.Errorf("%s: %s, want %s", more, got, want)
		}
		for _, f := range open(assess(t, "slow.yaml", []byte(example.Design(src)))) {
			if f.Rule == "load-undervoltage" && !strings.Contains(f.What, "; dropper, in series with it, takes ") {
				t.Error(f.What)
			}
		}
	}
}
