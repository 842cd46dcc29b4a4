package rules_test

import (
	"testing"

	"fusewright/harness/review/finding"
)

// A critical load that can never work is a danger whether its feed is dead or the coil of
// its relay; another load is a fault.
func TestCriticalLoadBehindADeadCoil(t *testing.T) {
	for critical, want := range map[string]finding.Severity{"yes": finding.Danger, "no": finding.Fault} {
		src := house(t, "relays:\n", "  dead: {type: blade C, rating: 5 A, at: rear}\nrelays:\n"+
			"  rl: {form: mini make, at: rear, fed by: lamp end, coil: {fed by: dead, returns to: frame, suppressed by: diode}}\n",
			"  cabin lamp:", "  brake light: {power: 5 W, behaves: resistor, critical: "+critical+", at: rear, fed by: rl, returns to: frame}\n  cabin lamp:")
		got := finding.Severity(0)
		for _, f := range assess(t, "critical.yaml", src) {
			if f.Rule == "relay-never-energised" {
				got = f.Severity
			}
		}
		if got != want {
			t.Errorf("critical %s: %v, want %v", critical, got, want)
		}
	}
}
