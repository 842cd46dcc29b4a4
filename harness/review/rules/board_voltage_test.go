package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// A lithium battery's protection opens above 15.2 V: a regulator that holds no more leaves a load dump to chance, one that
// holds 15.3 V makes it certain.
func TestRegulatorOpensTheProtection(t *testing.T) {
	for volts, want := range map[string]finding.Severity{"15.2 V": finding.Advice, "15.3 V": finding.Fault} {
		bad := example.Design("\nbattery: {chemistry: LiFePO4, capacity: 40 Ah, board: 300 A, resistance: 6 mΩ, at: battery tray}\n")
		dump, said := finding.Severity(0), false
		for _, f := range assess(t, "board.yaml", []byte(replaced(t, bad, []string{"regulated: 14.3 V", "regulated: " + volts}))) {
			switch f.Rule {
			case "load-dump":
				dump = f.Severity
			case "charging-over-battery":
				said = strings.Contains(f.What, "its protection opens at 15.2 V")
			}
		}
		if dump != want || said != (want == finding.Fault) {
			t.Errorf("%s: load dump %s, said %v", volts, dump, said)
		}
	}
}
