package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// Control wires may have 0.35 mm² up to 1 A in the worst case, not a lamp's, nor one that flexes, nor a thinner one.
func TestControlWires(t *testing.T) {
	for _, c := range []struct {
		name, load, size, run string
		want                  bool
	}{
		{"electronics, 0.42 A", "power: 5 W, symbol: electronics", "0.35 mm²", "", false},
		{"a sensor", "power: 1 W, symbol: sensor", "0.35 mm²", "", false},
		{"just below 1 A", "power: 13 W, rated at: 14.3 V, behaves: resistor, figure: highest, symbol: electronics", "0.35 mm²", "", false},
		{"above 1 A", "power: 15 W, rated at: 14.3 V, behaves: resistor, figure: highest, symbol: electronics", "0.35 mm²", "", true},
		{"a lamp", "power: 5 W, symbol: lamp", "0.35 mm²", "", true},
		{"in a run that flexes", "power: 5 W, symbol: electronics", "0.35 mm²", ", flexes: yes", true},
	} {
		text := example.Design(fmt.Sprintf(`
runs:
  - {from: battery tray, to: rear, length: 600 mm%s}
fuses:
  lamp fuse: {type: blade C, rating: 2 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  unit: {%s, at: rear, fed by: lamp fuse, wire: {size: %s}, returns to: frame}
`, c.run, c.load, c.size))
		got := false
		for _, f := range assess(t, "t.yaml", []byte(text)) {
			got = got || f.Rule == "wire-below-minimum" && strings.Contains(f.What, "0.35 mm² of copper")
		}
		if got != c.want {
			t.Errorf("%s: found %v, want %v", c.name, got, c.want)
		}
	}
}

// A core in a sheath on a boat may be thinner than a wire alone: 18 AWG, 0.81 mm², not of the single type.
func TestSheathedCoresOfBoats(t *testing.T) {
	for insulation, want := range map[string]bool{"twin tinned marine": false, "tinned marine": true} {
		text := strings.Replace(example.Design(fmt.Sprintf(`
practice: marine
wire: {insulation: %s, size: 18 AWG}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 16 AWG, length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame}
`, insulation)), "wire: {insulation: ISO", "", 1)
		got := false
		for _, f := range assess(t, "t.yaml", []byte(text)) {
			got = got || f.Rule == "wire-below-minimum" && strings.Contains(f.What, "0.811 mm²")
		}
		if got != want {
			t.Errorf("%s: found %v, want %v", insulation, got, want)
		}
	}
}
