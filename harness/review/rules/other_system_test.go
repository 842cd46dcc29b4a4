package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// TestOtherSystem: a part rated 24 V on 12 V is said to be so before anything else, also where
// it makes the network collapse; one rated 18 V has the two thirds of it, 12 V, that it needs.
func TestOtherSystem(t *testing.T) {
	const lamp = `
loads:
  tail lamp: {current: 1 A, behaves: BEHAVES, rated at: RATED, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`
	for _, c := range []struct {
		behaves, rated string
		first          bool
	}{
		{"resistor", "24 V", true},
		{"resistor", "18 V", false},
		{"resistor", "17.9 V", false},
		{"resistor", "13.5 V", false},
		{"resistor", "6 V", true},
		{"constant power", "24 V", true},
	} {
		found := assess(t, "x.yaml", []byte(example.Design(strings.NewReplacer("BEHAVES", c.behaves, "RATED", c.rated).Replace(lamp))))
		first := len(found) > 0 && found[0].First && strings.HasSuffix(found[0].Change, "on a 12.0 V system: fit one for 12.0 V, or feed it through a converter")
		if first != c.first {
			t.Errorf("%s, %s: said first %v", c.behaves, c.rated, first)
			for _, f := range found {
				t.Log(f.Rule, f.What, f.Change)
			}
		}
	}
}
