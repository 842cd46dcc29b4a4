package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// TestLeastWire: a fridge asks for 2.5 mm² from its fuse to where its return meets others, and 14 AWG counts as that; a figure
// of the design goes before the type's. The wire that two share is no one's own. The same fridge for 24 V asks for half.
func TestLeastWire(t *testing.T) {
	const src = `
grounds:
  bar: {kind: ground block, at: rear, limit: 60 A, returns to: battery negative, wire: {size: 1.5 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
switches:
  cool: {type: sealed rocker 20 A, at: rear, fed by: lamp fuse, wire: {size: SIZE}}
loads:
  fridge: {type: compressor fridge, OWNat: rear, fed by: cool, wire: {size: SIZE, length: 300 mm}, returns to: bar, return wire: {size: SIZE, length: 300 mm}}
  lamp: {power: 5 W, behaves: resistor, at: rear, fed by: FROM, wire: {size: 1.5 mm², length: 300 mm}, returns to: bar, return wire: {size: 1.5 mm², length: 300 mm}}
`
	for _, c := range []struct {
		size, own, from string
		parts           string
	}{
		{"2.5 mm²", "", "keyed feed", ""},
		{"1.5 mm²", "", "keyed feed", "fridge fridge cool"},
		{"1.5 mm²", "", "cool", "fridge fridge"},
		{"1.5 mm²", "least wire: 1.5 mm², ", "keyed feed", ""},
		{"2.5 mm²", "least wire: 4 mm², ", "keyed feed", "fridge fridge cool"},
		{"1.5 mm²", "least wire: 1.87 mm², ", "keyed feed", ""},                  // 1.5 of 1.87 is 0.802
		{"1.5 mm²", "least wire: 1.9 mm², ", "keyed feed", "fridge fridge cool"}, // 0.789
		{"1.5 mm²", "rated at: 24 V, ", "keyed feed", ""},
	} {
		text := strings.NewReplacer("SIZE", c.size, "OWN", c.own, "FROM", c.from).Replace(src)
		var parts []string
		for _, f := range finding.All(assess(t, "least.yaml", []byte(example.Design(text)))) {
			if f.Rule == "wire-below-minimum" {
				parts = append(parts, f.Part)
			}
		}
		if got := strings.Join(parts, " "); got != c.parts {
			t.Errorf("%s, %s%s: %q, want %q", c.size, c.own, c.from, got, c.parts)
		}
	}
}
