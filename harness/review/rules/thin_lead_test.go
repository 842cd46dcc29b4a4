package rules_test

import (
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// A lead that the design states is held against the fuse before it, whatever the way there.
// Where there is no fuse, or one in the return alone, the feed itself is the danger.
func TestThinLeadBehindTooLargeAFuse(t *testing.T) {
	const load = "loads:\n  tail lamp: {power: 5 W, behaves: resistor, lead: {size: 0.22 mm²}, at: rear, MORE, wire: {size: 2.5 mm²}, return wire: {size: 2.5 mm²}}\n"
	const keyed = "taps:\n  keyed feed: {at: battery tray, hot: key, fuse: FUSE, spare: 10 A, supervised: no}\n"
	const own = "fuses:\n  lamp fuse: {type: blade C, rating: FUSE, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}\n"
	const none = "fuses: {}\n"
	for _, c := range []struct{ name, more, sections, instead string }{
		{"its own fuse", "fed by: lamp fuse, returns to: frame", own, ""},
		{"a way of a block", "fed by: box 1, returns to: frame", none +
			"blocks:\n  box: {type: fuse block 4 way blade C, at: rear, fed by: battery, wire: {size: 2.5 mm²}, ways: {1: FUSE, 2: spare, 3: spare, 4: spare}}\n", ""},
		{"the fuse of a tap", "fed by: keyed feed, returns to: frame", none + keyed, ""},
		{"a relay", "fed by: lamp relay, returns to: frame", own +
			"relays:\n  lamp relay: {form: mini make 12 V, at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}\n", ""},
		{"a plug", "plug: sealed 2.8, fed by: lamp fuse, returns to: frame", own, ""},
		{"a splice", "fed by: joint, returns to: frame", own + "splices:\n  joint: {at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}}\n", ""},
		{"two feeds, the first with a small fuse", "fed by: [small switch, lamp switch], returns to: frame", own +
			"  small fuse: {type: blade C, rating: 1 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}\n" +
			"switches:\n  lamp switch: {type: toggle 20 A, at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}}\n  small switch: {type: toggle 20 A, at: rear, fed by: small fuse, wire: {size: 2.5 mm²}}\n", ""},
		{"fitted already", "fitted: yes, fed by: lamp fuse, returns to: frame", own, ""},
		{"a strip bolted down", "fed by: lamp fuse, returns to: frame", "fuses:\n" +
			"  lamp fuse: {type: strip SF30, rating: STRIP, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}\n", ""},
		{"a fuse in the return too", "fed by: lamp fuse, returns to: back fuse", own +
			"  back fuse: {type: blade C, rating: 1 A, at: battery tray, returns to: battery negative, return wire: {size: 2.5 mm²}}\n", ""},
		{"a fuse in the return alone", "fed by: battery, returns to: back fuse", "fuses:\n" +
			"  back fuse: {type: blade C, rating: FUSE, at: battery tray, returns to: battery negative, return wire: {size: 2.5 mm²}}\n", "unfused-conductor"},
		{"no fuse", "fed by: battery, returns to: frame", none, "unfused-conductor"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, fuse := range []struct {
				rating, strip string
				danger        bool
			}{{"1 A", "", false}, {"20 A", "30 A", true}} {
				if c.instead != "" && !fuse.danger || c.name == "a strip bolted down" && fuse.strip == "" {
					continue
				}
				src := example.Design(replace(c.sections+load, "MORE", c.more, "FUSE", fuse.rating, "STRIP", fuse.strip))
				rule := c.instead
				if rule == "" {
					rule = "fuse-over-accessory"
				}
				var worst finding.Severity
				for _, f := range finding.All(assess(t, "lead.yaml", []byte(src))) {
					if f.Rule == rule {
						worst = max(worst, f.Severity)
					}
				}
				if got := worst == finding.Danger; got != fuse.danger || !fuse.danger && worst != 0 {
					t.Errorf("%s: %s is %v", fuse.rating, rule, worst)
				}
			}
		})
	}
}
