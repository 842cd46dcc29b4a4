package rules_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// A bilge pump on manual, off and automatic: its float must be live with the key off, on
// whatever side of the switch the key stands.
func TestBilgePumpOnAutomatic(t *testing.T) {
	src, err := os.ReadFile(casesDir + "/ok/positions.yaml")
	if err != nil {
		t.Fatal(err)
	}
	whole := string(src)
	tap := "\ntaps:\n  keyed: {at: locker, hot: key, fuse: 10 A, spare: 6 A, supervised: no}\n"
	second := "  auto fuse: {type: blade C, rating: 5 A, at: locker, fed by: keyed, wire: {length: 150 mm}}\nswitches:"
	tests := []struct {
		name   string
		change []string
		want   string
	}{
		{"as it is", nil, ""},
		{"all behind the key", []string{"pump fuse: {type: blade C, rating: 5 A, at: locker, fed by: battery", "pump fuse: {type: blade C, rating: 5 A, at: locker, fed by: keyed"},
			"bilge pump is fed only with the key on"},
		{"the float alone behind the key", []string{"fed by: pump automatic", "fed by: auto fuse", "switches:\n", second + "\n"},
			"float is fed only with the key on, so water starts nothing"},
		{"a float behind the key, and one that is not", []string{"fed by: pump automatic}", "fed by: pump automatic}\n  second float: {type: float switch 15 A, at: bilge, fed by: auto fuse}",
			"[pump manual, float]", "[pump manual, float, second float]", "switches:\n", second + "\n"}, ""},
	}
	for _, tt := range tests {
		text := strings.Replace(whole, "\nfuses:", tap+"fuses:", 1)
		for i := 0; i+1 < len(tt.change); i += 2 {
			if !strings.Contains(text, tt.change[i]) {
				t.Fatalf("%s: no %q", tt.name, tt.change[i])
			}
			text = strings.Replace(text, tt.change[i], tt.change[i+1], 1)
		}
		got := ""
		for _, f := range assess(t, "boat.yaml", []byte(text)) {
			if f.Rule == "bilge-pump-keyed" {
				got = f.What
				if f.Severity != finding.Danger {
					t.Errorf("%s: %v", tt.name, f.Severity)
				}
			}
		}
		if !strings.Contains(got, tt.want) || (tt.want == "") != (got == "") {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}
