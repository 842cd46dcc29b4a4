package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// TestDropLeads: of a drop the figure comes first that is past the limit: nominal where
// that is, the worst case where it alone is.
func TestDropLeads(t *testing.T) {
	for lengthM, want := range map[float64]string{6: "% at nominal (likely", 4: "% in the worst case (nominal"} {
		src := example.Design(fmt.Sprintf(`
loads:
  tail lamp: {power: 20 W, behaves: resistor, critical: yes, at: rear, fed by: lamp fuse, wire: {size: 0.75 mm², length: %g m}, returns to: frame, return wire: {size: 1 mm²}}
`, lengthM))
		said := "nothing"
		for _, f := range assess(t, "lamp", []byte(src)) {
			if f.Rule == "voltage-drop" {
				said = f.Severity.String() + ": " + f.What
			}
		}
		if !strings.HasPrefix(said, "advice: ") || !strings.Contains(said, want) {
			t.Errorf("%g m: %s, want advice with %q", lengthM, said, want)
		}
	}
}
