package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// What takes up water is no cover where it is wet on a boat.
func TestCoverInTheWet(t *testing.T) {
	for _, c := range []struct {
		practice, wet, cover string
		want                 finding.Severity
	}{{"marine", "yes", "braided glass sleeve", finding.Advice}, {"marine", "no", "braided glass sleeve", 0},
		{"marine", "yes", "silicone fire sleeve", 0}, {"motorcycle", "yes", "braided glass sleeve", 0}} {
		text := replace("practice: PRACTICE\nplaces:\n  battery tray: {ambient: 40 °C}\n  rear: {ambient: 35 °C, wet: WET}\nruns:\n"+
			"  - {from: battery tray, to: rear, length: 600 mm, cover: COVER}\n", "PRACTICE", c.practice, "WET", c.wet, "COVER", c.cover)
		if got := gravest(t, text, "cover-unsuited"); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// A joint of three wires that the design names is judged in a wet place; of one left to the
// tool nobody said how it is made.
func TestOpenJointInTheWet(t *testing.T) {
	const text = `
places: {battery tray: {ambient: 40 °C}, rear: {ambient: 35 °C, wet: yes}}
splices: {joint: {at: rear, fed by: lamp fuse, wire: {size: 1 mm²TO}}}
loads:
  tail lamp: {type: LED tail lamp, at: rear, fed by: joint, wire: {size: 1 mm², length: 300 mmFROM}, plug: sealed 1.5, returns to: frame}
  stop lamp: {type: LED tail lamp, at: rear, fed by: joint, wire: {size: 1 mm², length: 300 mmFROM}, plug: sealed 1.5, returns to: frame}
`
	for kind, want := range map[string]finding.Severity{"open-barrel splice 6 mm²": finding.Fault, "": 0} {
		to, from := "", ""
		if kind != "" {
			to, from = ", ends: {to: "+kind+"}", ", ends: {from: "+kind+"}"
		}
		if got := gravest(t, strings.NewReplacer("TO", to, "FROM", from).Replace(text), "unsealed-in-wet-place"); got != want {
			t.Errorf("%q: %s, want %s", kind, got, want)
		}
	}
}
