package rules_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// By hand: AGM takes 0.4 of its capacity an hour, LiFePO4 all of it. A DC-DC charger of 10 A and
// panels of 130 W · 0.94 / 14.3 V = 8.55 A give 18.5 A: 0.4 · 46 Ah = 18.4 A is just below. The shore
// charger of 20 A runs beside the panels, without the engine: 28.5 A, and 0.4 · 71 Ah = 28.4 A.
func TestChargedTooFast(t *testing.T) {
	const (
		agm    = "house: {chemistry: AGM, capacity: 30 Ah, rate: 10 h"
		panels = "panel: 130 W, at: rear, returns to: house negative, return wire: {length: 120 mm}}\n"
		shore  = "  shore: {type: shore charger 20 A, at: rear, returns to: house negative, return wire: {length: 120 mm}}\n"
		ends   = "fed by: [house end, roof end]"
		roof   = "  roof end:"
	)
	mains := []string{panels, panels + shore, ends, "fed by: [house end, roof end, shore end]",
		roof, "  shore end: {type: blade C, rating: 30 A, at: rear, fed by: shore, wire: {length: 120 mm}}\n" + roof}
	for _, c := range []struct {
		name    string
		changes []string
		want    string
	}{
		{"above", []string{agm, "house: {chemistry: AGM, capacity: 46 Ah, rate: 10 h"}, "booster and roof together give house up to 18.5 A; AGM of 46 Ah should get 18.4 A"},
		{"below", []string{agm, "house: {chemistry: AGM, capacity: 47 Ah, rate: 10 h"}, ""},
		{"flooded", []string{agm, "house: {chemistry: flooded, capacity: 92 Ah"}, "flooded of 92 Ah should get 18.4 A"},
		{"lithium above", []string{agm, "house: {chemistry: LiFePO4, capacity: 18 Ah"}, "LiFePO4 of 18 Ah should get 18 A"},
		{"lithium below", []string{agm, "house: {chemistry: LiFePO4, capacity: 19 Ah"}, ""},
		{"on shore, above", append([]string{agm, "house: {chemistry: AGM, capacity: 71 Ah, rate: 10 h"}, mains...), "roof and shore together give house up to 28.5 A"},
		{"on shore, below", append([]string{agm, "house: {chemistry: AGM, capacity: 72 Ah, rate: 10 h"}, mains...), ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			src, err := os.ReadFile(filepath.Join(casesDir, "charged-too-fast.yaml"))
			if err != nil {
				t.Fatal(err)
			}
			expectCharge(t, replaced(t, string(src), c.changes), c.want)
		})
	}
}

// Over a link that is closed with the engine running the charging system itself charges: 25.3 A less the 7 A of its own loads
// into lithium with a protection, and lead takes it for minutes only.
func TestChargedTooFastByTheEngine(t *testing.T) {
	const agm = "house: {chemistry: AGM, capacity: 30 Ah, rate: 10 h, resistance: 14 mΩ"
	for _, c := range []struct{ name, house, want string }{
		{"lithium", "house: {chemistry: LiFePO4, board: 50 A, capacity: 15 Ah, resistance: 10 mΩ", "the charging system gives house up to 18"},
		{"large enough", "house: {chemistry: LiFePO4, board: 50 A, capacity: 26 Ah, resistance: 10 mΩ", ""},
		{"lead", "house: {chemistry: AGM, capacity: 20 Ah, rate: 10 h, resistance: 14 mΩ", ""},
	} {
		t.Run(c.name, func(t *testing.T) { expectCharge(t, string(house(t, agm, c.house)), c.want) })
	}
}

func expectCharge(t *testing.T, text, want string) {
	t.Helper()
	var got string
	for _, f := range open(assess(t, "charge.yaml", []byte(text))) {
		if f.Rule == "charged-too-fast" {
			got = f.What
		}
	}
	if (got == "") != (want == "") || !strings.Contains(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// replaced is a text with pairs of old and new put in.
func replaced(t *testing.T, text string, changes []string) string {
	t.Helper()
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("the design has no %q", changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	return text
}
