package rules_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// Each of two feeds must do alone: drop, wire current and fuse share are those of the same
// load with the worse feed as its only one (but for what the idle wires beside it are warm),
// and the situation names the feed.
func TestEachFeedAlone(t *testing.T) {
	const text = "fuses:\n  one fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}\n" +
		"  other fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}\n" +
		"switches:\n  one: {type: toggle 20 A, at: rear, fed by: one fuse, wire: {size: 2.5 mm²}}\n" +
		"  other: {type: toggle 20 A, at: rear, fed by: other fuse, wire: {size: 0.35 mm², length: 4 m}}\n" +
		"loads:\n  tail lamp: {power: 120 W, rated at: 12 V, behaves: resistor, figure: highest, at: rear, fed by: FEED, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}\n" +
		"situations:\n  ride: {engine: cruise, on: [tail lamp]}\n"
	worst := func(feed string) map[string]*finding.Finding {
		list := map[string]*finding.Finding{}
		for _, f := range finding.All(assess(t, "feeds.yaml", []byte(example.Design(replace(text, "FEED", feed))))) {
			if known := list[f.Rule]; f.Figure.Given() && (known == nil || f.Figure.Value > known.Figure.Value) {
				list[f.Rule] = f
			}
		}
		return list
	}
	both := worst("[one, other]")
	for rule, feed := range map[string]string{"voltage-drop": "other", "wire-over-current": "other", "fuse-under-load": "one"} {
		a, b := both[rule], worst(feed)[rule]
		if a == nil || b == nil {
			t.Errorf("%s: %v with both, %v alone", rule, a, b)
			continue
		}
		if math.Abs(a.Figure.Value-b.Figure.Value) > 0.01*b.Figure.Value || a.Severity != b.Severity || !strings.HasSuffix(a.Situation, "through "+feed+" alone") {
			t.Errorf("%s: %v %g in %q, want %v %g", rule, a.Severity, a.Figure.Value, a.Situation, b.Severity, b.Figure.Value)
		}
	}
}
