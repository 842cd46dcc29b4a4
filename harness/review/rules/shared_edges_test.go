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
// batteries of like voltage and 12 mΩ, the nearer gives the more), so from 3.09 W on.
func TestSharedFromATenthOfAnAmpere(t *testing.T) {
	bad := strings.Replace(rules.Find("start-battery-shared").Bad, "resistance: 30 mΩ", "resistance: 12 mΩ", 1)
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

// Over a relay that lithium holds closed another such relay is no remedy; over a plain link it is one.
func TestSharedOverASensingRelay(t *testing.T) {
	const lithium = "chemistry: LiFePO4, board: 100 A, capacity: 30 Ah"
	for want, text := range map[string][]byte{
		"use a DC-DC charger": house(t, "battery: {chemistry: AGM, capacity: 20 Ah, rate: 10 h", "battery: {"+lithium, "house: {chemistry: AGM, capacity: 30 Ah, rate: 10 h", "house: {"+lithium,
			"cabin lamp: {power: 5 W", "cabin lamp: {power: 30 W"),
		"link them over a voltage-sensing relay": house(t, "at: rear, fed by: charging relay}", "at: rear, fed by: start end}"),
	} {
		var got []string
		for _, f := range open(assess(t, "house.yaml", text)) {
			if f.Rule == "start-battery-shared" {
				got = append(got, f.Change)
			}
		}
		if len(got) != 1 || !strings.HasPrefix(got[0], want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
