package rules_test

import (
	"testing"

	"fusewright/harness/review/rules"
)

// TestSays: every rule has its short form, which fits a line of a terminal behind a name.
func TestSays(t *testing.T) {
	for _, r := range rules.All() {
		if n := len([]rune(r.Says)); n == 0 || n > 44 {
			t.Errorf("%s: %q", r.Name, r.Says)
		}
	}
}
