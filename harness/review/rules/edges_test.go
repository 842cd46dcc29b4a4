package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// TestEdges: at and below a limit nothing is said, above it the rule speaks; and what
// is near a mistake without being one is left alone.
func TestEdges(t *testing.T) {
	lamp := func(of string) string {
		return "loads:\n  tail lamp: {" + of + ", at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}\n"
	}
	run := func(of string) string { return "runs:\n  - {from: battery tray, to: rear, " + of + "}\n" }
	behind := func(fuse, what string) string {
		return "taps:\n  keyed feed: {at: battery tray, hot: key, fuse: 40 A, spare: 20 A, supervised: no}\n" +
			"fuses:\n  lamp fuse: {type: blade C, rating: " + fuse + ", at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}\n" +
			"switches:\n  lamp switch: {" + what + ", at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}}\n" +
			strings.NewReplacer("fed by: lamp fuse", "fed by: lamp switch", "size: 1 mm²", "size: 2.5 mm²").Replace(lamp("power: 40 W, behaves: resistor"))
	}
	charged := func(chemistry, volts string) string {
		return "battery: {chemistry: " + chemistry + ", capacity: 12 Ah, resistance: 6 mΩ, at: battery tray}\n" +
			"charging: {regulated: " + volts + ", output: {1300 rpm: 14 A, 3000 rpm: 24 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}\n"
	}
	byHand := func(what string) string {
		return "fuses:\n  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}\n" +
			"switches:\n  lamp switch: {type: " + what + ", at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}\n" +
			strings.Replace(lamp("power: 10 W, behaves: constant power"), "fed by: lamp fuse", "fed by: lamp switch", 1)
	}
	// 12 Ah at 1 A and its Peukert's exponent: the reserve of 0.6 is left for some 4.7 h.
	ride := func(parked string) string {
		return "battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 6 mΩ, at: battery tray}\n" +
			strings.Replace(byHand("toggle 20 A"), "power: 10 W", "power: 12 W, stays live: \"lights the camp\"", 1) +
			"situations:\n  riding: {engine: cruise}\n" +
			"rides:\n  out: {legs: [{lasts: 10 min, engine: cruise}, {lasts: " + parked + ", key: off, on: [tail lamp], ambient: 25 °C}]}\n"
	}
	for _, c := range []struct {
		name, rule, sections string
		want                 bool
	}{
		{"just below eight times the usual power", "implausible-figure", lamp("type: LED tail lamp, power: 23.9 W"), false},
		{"eight times", "implausible-figure", lamp("type: LED tail lamp, power: 24 W"), true},
		{"just above an eighth", "implausible-figure", lamp("type: LED tail lamp, power: 380 mW"), false},
		{"an eighth", "implausible-figure", lamp("type: LED tail lamp, power: 375 mW"), true},
		{"a long bar", "implausible-figure", lamp("symbol: LED, behaves: constant power, power: 250 W"), false},
		{"a longer one than is made", "implausible-figure", lamp("symbol: LED, behaves: constant power, power: 251 W"), true},
		{"a socket draws what is plugged in", "implausible-figure", lamp("type: accessory socket, power: 10 W"), false},
		{"the longest run", "implausible-figure", run("length: 5 m"), false},
		{"longer than any", "implausible-figure", run("length: 5.1 m"), true},
		{"a short run", "implausible-figure", run("length: 11 mm"), false},
		{"no longer than a wire is thick", "implausible-figure", run("length: 10 mm"), true},
		{"the cover's own heat", "cover-unsuited", run("length: 600 mm, cover: PVC tube, near: {what: block, ambient: 85 °C}"), false},
		{"hotter than the cover", "cover-unsuited", run("length: 600 mm, cover: PVC tube, near: {what: block, ambient: 86 °C}"), true},
		{"stiff where nothing moves", "cover-unsuited", run("length: 600 mm, cover: rigid conduit"), false},
		{"bare at 70 °C", "cover-unsuited", run("length: 600 mm, near: {what: exhaust, ambient: 70 °C}"), false},
		{"bare above it", "cover-unsuited", run("length: 600 mm, near: {what: exhaust, ambient: 71 °C}"), true},
		{"sleeved at 100 °C", "cover-unsuited", run("length: 600 mm, cover: braided sleeve, near: {what: exhaust, ambient: 100 °C}"), false},
		{"sleeved above it", "cover-unsuited", run("length: 600 mm, cover: braided sleeve, near: {what: exhaust, ambient: 101 °C}"), true},
		{"a fuse below twice the contact", "part-below-fuse", behind("7.5 A", "type: handlebar rocker 5 A"), false},
		{"twice the contact", "part-below-fuse", behind("10 A", "type: handlebar rocker 5 A"), true},
		{"a battery switch", "part-below-fuse", behind("25 A", "type: battery switch 100 A"), false},
		{"15 A for little", "fuse-far-above-load", behind("15 A", "type: toggle 20 A"), false},
		{"five times the load", "fuse-far-above-load", behind("20 A", "type: toggle 20 A"), true},
		{"four times the load", "fuse-far-above-load", strings.Replace(behind("20 A", "type: toggle 20 A"), "40 W", "60 W", 1), false},
		{"as high as AGM is charged", "charging-over-battery", charged("AGM", "15 V"), false},
		{"beyond that", "charging-over-battery", charged("AGM", "15.01 V"), true},
		{"as high as gel is charged", "charging-over-battery", charged("gel", "14.4 V"), false},
		{"beyond what gel bears", "charging-over-battery", charged("gel", "14.41 V"), true},
		{"left on by a toggle", "live-with-key-off", byHand("toggle 20 A"), true},
		{"on with the key", "live-with-key-off", byHand("key switch 10 A"), false},
		{"a ride that ends on the reserve", "battery-flattened", ride("4 h"), false},
		{"a ride that ends below it", "battery-flattened", ride("6 h"), true},
		{"a dry place without vapour", "spark-in-vapour", "", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			said := false
			for _, f := range assess(t, "edge.yaml", []byte(example.Design(c.sections))) {
				said = said || f.Rule == c.rule
			}
			if said != c.want {
				t.Errorf("%s: said %v, want %v", c.rule, said, c.want)
			}
		})
	}
}

// TestSheathToTheFuse: the longer distance in a sheath holds where every wire to the first
// fuse lies in one.
func TestSheathToTheFuse(t *testing.T) {
	const two = `
switches:
  isolator: {type: battery switch 100 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 150 mmFIRST}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: isolator, wire: {size: 4 mm², length: 500 mmSECOND}}
`
	for name, c := range map[string]struct {
		first, second string
		want          bool
	}{
		"both bare": {"", "", true}, "both in a sheath": {", sheathed: yes", ", sheathed: yes", false},
		"the first alone": {", sheathed: yes", "", true}, "the second alone": {"", ", sheathed: yes", true},
	} {
		text := strings.NewReplacer("FIRST", c.first, "SECOND", c.second).Replace(two)
		said := false
		for _, f := range assess(t, "sheath.yaml", []byte(example.Design(text))) {
			said = said || f.Rule == "fuse-too-far"
		}
		if said != c.want {
			t.Errorf("%s: said %v", name, said)
		}
	}
}
