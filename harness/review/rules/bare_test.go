package rules_test

import (
	"testing"

	"fusewright/harness/proof/example"
)

// TestLimitSays: class B bears 100 °C, 90 °C with the margin. From half a kelvin below
// that on the words say why no current may be carried; cooler air leaves a limit.
func TestLimitSays(t *testing.T) {
	for ambient, want := range map[string]string{
		"89.6 °C": "the air here is at the wire's class less the margin: it may carry nothing",
		"99.9 °C": "the air here is at the wire's class less the margin: it may carry nothing",
		"100 °C":  "the air here is at the wire's class: it may carry nothing",
		"89.4 °C": "",
	} {
		met := false
		for _, f := range assess(t, "hot.yaml", []byte(example.Design(`
runs:
  - {from: battery tray, to: rear, length: 600 mm, near: {what: exhaust, ambient: `+ambient+`}, cover: heat sleeve}
loads:
  tail lamp: {power: 45 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`))) {
			if f.Rule == "wire-over-current" {
				met = true
				if f.LimitSays != want {
					t.Errorf("%s: %q, want %q", ambient, f.LimitSays, want)
				}
			}
		}
		if !met {
			t.Errorf("%s: no finding", ambient)
		}
	}
}
