package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// A link shares the first battery from 0.1 A on: of a lamp on the house battery 32.4 mA a watt come through it (two
// batteries of like voltage, the nearer gives the more), so from 3.09 W on.
func TestSharedFromATenthOfAnAmpere(t *testing.T) {
	bad := rules.Find("start-battery-shared").Bad
	for watts, want := range map[float64]finding.Severity{2.8: 0, 3.05: 0, 3.15: finding.Fault, 3.3: finding.Fault} {
		src := strings.Replace(bad, "power: 5 W", fmt.Sprintf("power: %g W", watts), 1)
		if got := gravest(t, src, "start-battery-shared"); got != want {
			t.Errorf("%g W: %v, want %v", watts, got, want)
		}
		if !strings.Contains(example.Design(src), fmt.Sprintf("power: %g W", watts)) {
			t.Fatal("the example has no such lamp")
		}
	}
}
