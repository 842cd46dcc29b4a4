package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// Two feeds behind fuses of their own: a danger where they meet, advice where a diode in each
// keeps them apart, a danger again where one of the two has none or is reversed.
func TestFeedsApartByDiodes(t *testing.T) {
	const fuses = `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  spare fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
diodes:
  first: {type: Schottky diode 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
  second: {type: Schottky diode 10 A, at: battery tray, fed by: spare fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: [FEEDS], wire: {size: 1 mm²}, returns to: frame}
`
	tests := []struct {
		name, feeds, reversed string
		want                  finding.Severity
	}{
		{"no diodes in the way", "lamp fuse, spare fuse", "", finding.Danger},
		{"a diode in each", "first, second", "", finding.Advice},
		{"a diode in one", "first, spare fuse", "", finding.Danger},
		{"one of them reversed", "first, second", "reversed: yes, ", finding.Danger},
	}
	for _, tt := range tests {
		text := strings.Replace(strings.Replace(fuses, "FEEDS", tt.feeds, 1), "second: {", "second: {"+tt.reversed, 1)
		got := finding.Severity(0)
		for _, f := range assess(t, "feeds.yaml", []byte(example.Design(text))) {
			if f.Rule == "back-feed" {
				got = f.Severity
			}
		}
		if got != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}
