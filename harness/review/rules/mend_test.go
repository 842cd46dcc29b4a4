package rules_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/review/rules"
)

// TestMends pins what sizing answers for and what it does about each. A new rule
// that depends on a size stands here, or sizing never looks at it.
func TestMends(t *testing.T) {
	want := map[string]rules.Mend{}
	for mend, names := range map[rules.Mend]string{
		rules.MendWire: "chafing-run charging-cable-drop charging-cable-thin cover-unsuited flexing-run fuse-not-selective fuse-over-wire fuse-type-in-block fuse-wire-curve " +
			"insulation-class relay-coil-voltage return-below-fuse shared-return-thin short-overheats-wire " +
			"overload-hurts-wire situation-unsolved terminal-overload wire-before-fuse wire-below-minimum wire-over-current",
		rules.MendDrop:      "voltage-drop",
		rules.MendLowest:    "load-undervoltage",
		rules.MendShort:     "short-too-weak",
		rules.MendFuse:      "charging-fuse-small fuse-under-load feed-fuse-under-branches fuse-voltage fuse-over-accessory",
		rules.MendStart:     "fuse-inrush",
		rules.MendFuseAbove: "fuse-grading",
		rules.MendBreaking:  "fuse-breaking-capacity",
		rules.MendPlug:      "connector-overload connector-wire-size plug-overload no-terminal-fits",
		rules.MendPart:      "plug-ways",
		rules.MendSeal:      "unsealed-in-wet-place",
		rules.MendSpark:     "spark-in-vapour",
		rules.MendRelay:     "relay-contact-overload relay-too-hot",
		rules.MendLink:      "link-equalising",
		rules.MendBlock:     "block-overload block-way-overload",
	} {
		for _, name := range strings.Fields(names) {
			if rules.Find(name) == nil {
				t.Errorf("%s is no rule", name)
			}
			want[name] = mend
		}
	}
	inUse := []string{"block-overload", "charging-cable-thin", "charging-fuse-small", "connector-overload", "fuse-under-load", "link-equalising", "plug-overload", "relay-contact-overload", "wire-over-current"}
	for _, r := range rules.All() {
		if r.Mend != want[r.Name] {
			t.Errorf("%s: mended by %d, want %d", r.Name, r.Mend, want[r.Name])
		}
		if r.InUse != slices.Contains(inUse, r.Name) {
			t.Errorf("%s: in use %v", r.Name, r.InUse)
		}
	}
}
