package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
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
