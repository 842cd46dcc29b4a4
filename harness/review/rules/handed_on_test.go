package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// TestReturnHandedOnByALoad: two fuses of 20 A, and the return of one lamp by way of the
// other's wire of 1 mm², which carries some 17 A: as through a ground block.
func TestReturnHandedOnByALoad(t *testing.T) {
	bad := rules.Find("shared-return-thin").Bad
	_, bad, _ = strings.Cut(strings.ReplaceAll(bad, "rating: 10 A", "rating: 20 A"), "fuses:")
	own := strings.ReplaceAll("fuses:"+bad, "returns to: rear bus, return wire: {size: 2.5 mm², length: 200 mm}",
		"returns to: battery negative, return wire: {size: 1 mm², length: 900 mm}")
	at := strings.LastIndex(own, "battery negative")
	for src, want := range map[string]finding.Severity{
		own: 0,
		own[:at] + "left lamp" + own[at+len("battery negative"):]: finding.Fault,
	} {
		if got := gravest(t, src, "shared-return-thin"); got != want {
			t.Errorf("%s, want %s\n%s", got, want, src)
		}
	}
}
