package rules_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// house is the design with a further battery, changed: pairs of old and new text.
func house(t *testing.T, changes ...string) []byte {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(casesDir, "ok", "house-by-sensing-relay.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("the design has no %q", changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	return []byte(text)
}

const (
	houseEnds  = "at: rear, fed by: house end, wire: {length: 120 mm}}"
	lampEnd    = "lamp end: {type: blade C, rating: 5 A, at: rear, fed by: house, wire: {length: 120 mm}}"
	lampEnd30  = "lamp end: {type: blade C, rating: 30 A, at: rear, fed by: house, wire: {size: 6 mm², length: 120 mm}}"
	lamp       = "at: rear, fed by: lamp end, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}, own switch: true"
	lamp30     = "at: rear, fed by: lamp end, maximum fuse: 30 A, wire: {size: 6 mm²}, returns to: frame, return wire: {size: 6 mm²}, own switch: true"
	lampEndOut = "  " + lampEnd + "\n"
)

// What two batteries drive through cables is judged at both.
func TestTwoBatteries(t *testing.T) {
	cable := func(to, size string) string {
		return strings.TrimSuffix(houseEnds, "}") + ", returns to: " + to + ", return wire: {size: " + size + "}}"
	}
	bus := "grounds:\n  bus: {kind: ground block, at: rear, returns to: battery negative, wire: {size: 0.75 mm²}}"
	tapped := func(size string) string {
		return "at: rear, fed by: charging relay, wire: {size: " + size + "}, returns to: frame, return wire: {size: " + size + "}, own switch: true"
	}
	for _, c := range []struct {
		name    string
		changes []string
		want    string // rules of the findings above advice
	}{
		{"a house's negative thinner than its fuses", []string{houseEnds, cable("frame", "0.75 mm²"), lampEnd, lampEnd30, lamp, lamp30}, "return-below-fuse"},
		{"a house's negative good for them", []string{houseEnds, cable("frame", "6 mm²"), lampEnd, lampEnd30, lamp, lamp30}, ""},
		{"thinner than the link's fuse alone", []string{houseEnds, cable("frame", "0.75 mm²")}, "return-below-fuse"},
		{"behind a ground block", []string{houseEnds, cable("bus", "6 mm²"), "grounds:", bus, lampEnd, lampEnd30, lamp, lamp30}, "return-below-fuse"},
		{"a load on the middle of the link", []string{lampEndOut, "", lamp, tapped("2.5 mm²")}, "back-feed fuse-over-wire return-below-fuse"},
		{"one behind its own fuse there", []string{lampEnd, strings.Replace(lampEnd, "fed by: house", "fed by: charging relay", 1)}, ""},
		{"whose wires bear both fuses", []string{lampEndOut, "", lamp, tapped("6 mm²")}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, f := range open(assess(t, "house.yaml", house(t, c.changes...))) {
				t.Logf("%v %s: %s", f.Severity, f.Rule, f.What)
				if f.Severity.String() != "advice" && !slices.Contains(got, f.Rule) {
					got = append(got, f.Rule)
				}
			}
			slices.Sort(got)
			if s := strings.Join(got, " "); s != c.want {
				t.Errorf("found %q, want %q", s, c.want)
			}
		})
	}
}
