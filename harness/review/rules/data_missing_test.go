package rules_test

import (
	"regexp"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// TestGapsAreSaid plants what other rules have to assume or leave out: each gap is
// one finding, and a design without it has none.
func TestGapsAreSaid(t *testing.T) {
	for _, c := range []struct{ name, sections, want string }{
		{"nothing missing", ``, ``},
		{"a place that the loom only passes", `
places:
  battery tray: {ambient: 40 °C}
  frame tube:
  rear: {ambient: 35 °C}
runs:
  - {from: battery tray, to: frame tube, length: 300 mm}
  - {from: frame tube, to: rear, length: 300 mm}
`, `^the ambient of frame tube is not given; 30 °C is assumed$`},
		{"a fuse without a place", `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm², length: 600 mm}, returns to: frame}
`, `^the place of lamp fuse is not given; 30 °C is assumed$`},
		{"a breaker in the heat", `
fuses:
  lamp fuse: {type: breaker type III, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
`, ``},
		{"more at rest than in use", `
loads:
  tail lamp: {power: 6 W, rated at: 12 V, behaves: resistor, standby: 501 mA, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "listens"}
`, `^tail lamp: 501 mA at rest but only 500 mA in use; which of the two is right\?$`},
		{"as much at rest", `
loads:
  tail lamp: {power: 6 W, rated at: 12 V, behaves: resistor, standby: 500 mA, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "listens"}
`, ``},
		{"how a motor starts", `
loads:
  tail lamp: {current: 500 mA, rated at: 12 V, behaves: motor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "turns"}
`, `^the start current of tail lamp is not given; 1\.50 A, 3 times what it runs with, is assumed$`},
		{"a soft start", `
loads:
  tail lamp: {current: 500 mA, rated at: 12 V, behaves: motor, inrush: {peak: 1, time: 1 ms}, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "turns"}
`, ``},
		{"a horn, which swings", `
loads:
  tail lamp: {current: 500 mA, rated at: 12 V, behaves: motor, symbol: horn, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "sounds"}
`, ``},
		{"a size that the practice's table does not list", `
practice: marine
wire: {insulation: ISO 6722 thin wall class B, size: 0.75 mm², colour: RD, return colour: BK}
`, `^the rating of wire W3 .*is by heat balance alone: 33 CFR 183\.425 lists 18 AWG to 4/0 AWG, not 0\.75 mm²$`},
	} {
		t.Run(c.name, func(t *testing.T) {
			var said []string
			for _, f := range assess(t, "gap.yaml", []byte(example.Design(c.sections))) {
				if f.Rule == "data-missing" {
					said = append(said, f.What)
				}
			}
			if c.want == "" && len(said) > 0 || c.want != "" && (len(said) != 1 || !regexp.MustCompile(c.want).MatchString(said[0])) {
				t.Errorf("said %q, want one that matches %q", said, c.want)
			}
		})
	}
}

// TestTapWithoutFuse: not known is not unfused; but of a tap that is always hot the fuse that
// nobody looked for may not be there, and advice would let it pass.
func TestTapWithoutFuse(t *testing.T) {
	const tap = `
taps:
  keyed feed: {at: battery tray, hot: HOT, FUSE spare: 6 A, supervised: no}
`
	for _, c := range []struct {
		hot, fuse string
		want      finding.Severity
	}{{"key", "", finding.Advice}, {"always", "", finding.Fault}, {"always", "fuse: 10 A,", 0}} {
		if got := gravest(t, strings.NewReplacer("HOT", c.hot, "FUSE", c.fuse).Replace(tap), "data-missing"); got != c.want {
			t.Errorf("hot %s, %q: %s, want %s", c.hot, c.fuse, got, c.want)
		}
	}
}
