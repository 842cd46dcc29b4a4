package rules_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// By hand: of 25.3 A the house battery takes 18.8 A, so that half of 30 Ah is full in 48 min, half of 18.5 Ah in 30 min at the most. Lead takes it for
// minutes only, and a shunt regulator's winding carries its full current whatever is on.
func TestAlternatorFlatOut(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(casesDir, "alternator-flat-out.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		old, new string
		want     bool
	}{
		{"capacity: 60 Ah", "capacity: 18.5 Ah", false},
		{"capacity: 60 Ah", "capacity: 30 Ah", true},
		{"chemistry: LiFePO4", "chemistry: AGM", false},
		{"charging:\n", "charging:\n  kind: alternator\n", true},
		{"charging:\n", "charging:\n  kind: stator with shunt regulator\n", false},
	} {
		text := strings.Replace(string(src), c.old, c.new, 1)
		if text == string(src) {
			t.Fatalf("no %q", c.old)
		}
		got := false
		for _, f := range assess(t, c.new, []byte(text)) {
			got = got || f.Rule == "alternator-flat-out"
		}
		if got != c.want {
			t.Errorf("%s: %t, want %t", c.new, got, c.want)
		}
	}
}
