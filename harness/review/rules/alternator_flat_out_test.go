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

// By hand: what the alternator leaves of 25.3 A, 18.7 A, fills half of 18.7 Ah in half an hour; below that there is no telling, whatever board the battery has or is not known to have, and above it no gap.
// Over 4.3 m there and back the link has 55.5 mΩ and a battery of 20 Ah 3 mΩ: (14.28 V − 13.23 V) / 58.5 mΩ = 17.9 A, with 6.4 A for the machine 24.3 A, 96 % of the output, which spares the alternator nothing: a smaller
// battery has more resistance, and only takes longer. Over 4.8 m it is 16.5 A and 91 %, over 5 m 16.0 A and 89 %.
func TestAlternatorFlatOutBySize(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(casesDir, "alternator-flat-out.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		run, store string
		want       bool
	}{
		{"900 mm", "18.6 Ah", false}, {"900 mm", "18.8 Ah", true}, {"900 mm", "18.8 Ah, board: 30 A", true},
		{"900 mm", "20 Ah", true}, {"900 mm", "21 Ah", true}, {"900 mm", "29.9 Ah", true}, {"900 mm", "30 Ah", true},
		{"4.3 m", "17.7 Ah", false}, {"4.3 m", "18 Ah", true}, {"4.3 m", "18.8 Ah", true}, {"4.3 m", "20 Ah", true}, {"4.3 m", "21 Ah", true}, {"4.3 m", "60 Ah", true},
		{"4.8 m", "20 Ah", true}, {"5 m", "20 Ah", false}, {"5 m", "60 Ah", false},
	} {
		text := strings.NewReplacer("60 Ah, resistance: 10 mΩ", c.store, "length: 900 mm", "length: "+c.run).Replace(string(src))
		got := false
		for _, f := range assess(t, c.store, []byte(text)) {
			got = got || f.Rule == "alternator-flat-out"
		}
		if got != c.want {
			t.Errorf("%s over %s: %t, want %t", c.store, c.run, got, c.want)
		}
	}
}
