package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// A relay that cannot close says which loads hang on it: they were not checked, whatever
// speaks for them.
func TestLoadsBehindARelayAreNamed(t *testing.T) {
	const relay = `
relays:
  lamp relay: {form: mini make FORM, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {COILreturns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
  plate lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`
	for _, c := range []struct {
		name, form, coil, rule, want string
		severity                     finding.Severity
	}{
		{"a coil that closes", "12 V", "fed by: lamp fuse, ", "relay-never-energised", "", 0},
		{"no feed of the coil", "12 V", "", "relay-never-energised", "; 2 loads are never on and not checked: plate lamp and tail lamp", finding.Fault},
		{"a coil for 24 V", "24 V", "fed by: lamp fuse, ", "relay-coil-voltage", "; 2 loads are never on and not checked: plate lamp and tail lamp", finding.Fault},
	} {
		t.Run(c.name, func(t *testing.T) {
			said, severity := "", finding.Severity(0)
			for _, f := range assess(t, "behind.yaml", []byte(example.Design(replace(relay, "FORM", c.form, "COIL", c.coil)))) {
				if f.Rule == c.rule {
					said, severity = f.What, f.Severity
				}
			}
			if severity != c.severity || !strings.HasSuffix(said, c.want) || c.want == "" && said != "" {
				t.Errorf("%v %q, want %v ending in %q", severity, said, c.severity, c.want)
			}
		})
	}
}
