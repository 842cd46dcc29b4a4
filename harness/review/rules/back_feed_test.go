package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// TestOneSourceOrTwo: fuses in parallel of one source add up, 5 A + 5 A; a keyed tap beside
// the battery is made live backwards; two batteries feed each other.
func TestOneSourceOrTwo(t *testing.T) {
	fed := func(second, more string) string {
		return example.Design(`
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  spare fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: ` + second + `, wire: {size: 1 mm², length: 100 mm}}
` + more + `loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: [lamp fuse, spare fuse], wire: {size: 1 mm²}, returns to: frame}
`)
	}
	for _, c := range []struct{ name, src, why string }{
		{"one tap twice", fed("keyed feed", ""), "one source twice, fuses in parallel: with both feeds live nothing behind their meeting opens below 5 A + 5 A = 10 A"},
		{"tap and battery", fed("battery", ""), "one battery by two ways that are not live together"},
		{"two batteries", fed("house", "batteries:\n  house: {chemistry: AGM, capacity: 50 Ah, rate: 20 h, resistance: 6 mΩ, at: rear, returns to: battery negative}\n"),
			"two batteries: with one fuse out the other battery still feeds the fault"},
	} {
		said := ""
		for _, f := range open(assess(t, "feeds.yaml", []byte(c.src))) {
			if f.Rule == "back-feed" {
				said = f.Why
			}
		}
		if !strings.Contains(said, c.why) {
			t.Errorf("%s: %q", c.name, said)
		}
	}
}

// A bilge pump is fed by its float and by hand, each behind a fuse: advice. Of another
// load, or with one feed bare, it is a danger.
func TestPumpOnFloatAndHand(t *testing.T) {
	const pump = `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
fuses:
  float fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
  hand fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
  big fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
switches:
  float switch: {type: float switch 15 A, at: rear, fed by: float fuse}
  hand switch: {type: toggle 20 A, at: rear, fed by: HAND}
loads:
  the pump: {type: TYPE, at: rear, fed by: [float switch, hand switch], wire: {length: 400 mm}, returns to: battery negative, stays live: "must run unattended"}
`
	gravities(t, "back-feed", pump, "TYPE | HAND", map[string]finding.Severity{
		"bilge pump | hand fuse":       finding.Advice,
		"fresh water pump | hand fuse": finding.Danger,
		"bilge pump | battery":         finding.Danger,
		"bilge pump | big fuse":        finding.Danger, // which the wires from the float do not bear
	})
}
