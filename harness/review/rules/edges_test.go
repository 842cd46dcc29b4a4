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
		{"bare at 100 °C", "cover-unsuited", run("length: 600 mm, near: {what: exhaust, ambient: 100 °C}"), false},
		{"bare above it", "cover-unsuited", run("length: 600 mm, near: {what: exhaust, ambient: 101 °C}"), true},
		{"a fuse below twice the contact", "part-below-fuse", behind("7.5 A", "type: handlebar rocker 5 A"), false},
		{"twice the contact", "part-below-fuse", behind("10 A", "type: handlebar rocker 5 A"), true},
		{"a battery switch", "part-below-fuse", behind("25 A", "type: battery switch 100 A"), false},
		{"15 A for little", "fuse-far-above-load", behind("15 A", "type: toggle 20 A"), false},
		{"five times the load", "fuse-far-above-load", behind("20 A", "type: toggle 20 A"), true},
		{"four times the load", "fuse-far-above-load", strings.Replace(behind("20 A", "type: toggle 20 A"), "40 W", "60 W", 1), false},
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
