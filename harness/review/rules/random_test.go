package rules_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
)

// TestRandomDesigns checks odd networks of every load kind: no rule may panic,
// repeat itself, or print a number that is none. Fixed seeds.
func TestRandomDesigns(t *testing.T) {
	checked := 0
	for seed := int64(1); seed <= 150; seed++ {
		r := reviewtest.Of(t, synth.Random(seed))
		seen := map[string]bool{}
		for _, f := range r.Findings {
			checked++
			key := f.Rule + "|" + f.Ref + "|" + f.What
			if seen[key] {
				t.Errorf("seed %d: said twice: %s", seed, key)
			}
			seen[key] = true
			if strings.Contains(f.What, "NaN") || strings.Contains(f.What, "Inf") {
				t.Errorf("seed %d: %s", seed, f.What)
			}
			if len(f.Numbers) > 0 && math.IsNaN(f.Numbers[0].Value) {
				t.Errorf("seed %d: %s: value is not a number", seed, f.What)
			}
		}
	}
	if checked == 0 {
		t.Error("150 odd networks gave no finding at all")
	}
}
