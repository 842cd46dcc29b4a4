package rules_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

const (
	dockOld = "fed by: house end, wire: {length: 120 mm}, returns to: frame}\n"
	dockNew = "fed by: [house end, dock end], wire: {length: 120 mm}, returns to: frame}\nchargers:\n  mains: {type: shore charger 20 A, at: rear, returns to: house negative, return wire: {SIZE, length: 120 mm}}\n"
	dockEnd = "fuses:\n  dock end: {type: blade C, rating: RATING, at: rear, fed by: mains, wire: {SIZE, length: 120 mm}}\n"
)

// A shore charger of 20 A that no situation has on: its fuse may carry 0.8 of its rating at the practice's share, 16 A
// of 20 A and 24 A of 30 A; 1 mm² may not carry 20 A, 4 mm² may.
func TestChargerAtItsRatedCurrent(t *testing.T) {
	for _, c := range []struct {
		name, rating, size string
		situation          string
		want               string // rules of charging and of currents
	}{
		{"right", "30 A", "size: 6 mm²", "", ""},
		{"a small fuse", "20 A", "size: 6 mm²", "", "charging-fuse-small"},
		{"thin wires", "30 A", "size: 1 mm²", "", "charging-cable-thin charging-cable-thin"},
		{"a small fuse that a situation loads", "20 A", "size: 6 mm²", "shore: yes, charge: {house: 20 %}", "fuse-under-load"},
	} {
		t.Run(c.name, func(t *testing.T) {
			filled := strings.NewReplacer("RATING", c.rating, "SIZE", c.size)
			changes := []string{"house: {chemistry: AGM, capacity: 30 Ah", "house: {chemistry: AGM, capacity: 100 Ah", dockOld, filled.Replace(dockNew), "fuses:\n", filled.Replace(dockEnd)}
			if c.situation != "" {
				changes = append(changes, "on: [cabin lamp]}", "on: [cabin lamp], "+c.situation+"}")
			}
			var got []string
			for _, f := range open(assess(t, "dock.yaml", house(t, changes...))) {
				switch f.Rule {
				case "charging-fuse-small", "charging-cable-thin", "wire-over-current", "fuse-under-load":
					got = append(got, f.Rule)
				}
			}
			if s := strings.Join(got, " "); s != c.want {
				t.Errorf("%q, want %q", s, c.want)
			}
		})
	}
}

// A full battery takes little of a booster, and likely all of it once it is a little lower: what is only likely does not
// speak for its fuse, nor for its cable. At its rated output it takes some 35 A, which 30 A may not carry at 70 °C, nor 2.5 mm².
func TestRatedWhateverIsLikely(t *testing.T) {
	src, err := os.ReadFile("../../../designs/hay-wain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	full := strings.NewReplacer("on: [fridge, kitchen USB, gas alarm], charge: {house: 50 %}", "on: []",
		"on: [fridge, kitchen socket, kitchen USB, gas alarm], charge: {house: 50 %}", "on: []").Replace(string(src))
	for _, c := range []struct{ was, is, rule string }{
		{"start end: {type: class T, rating: 50 A", "start end: {type: class T, rating: 30 A", "charging-fuse-small"},
		{"fed by: battery, wire: {size: 16 mm², length: 150 mm}}", "fed by: battery, wire: {size: 2.5 mm², length: 150 mm}}", "charging-cable-thin"},
	} {
		found := false
		for _, f := range open(assess(t, "hay-wain.yaml", []byte(replaced(t, full, []string{c.was, c.is})))) {
			found = found || f.Rule == c.rule && f.Severity == finding.Fault && f.Part == "start end"
		}
		if !found {
			t.Errorf("%s: no %s", c.is, c.rule)
		}
	}
}

// 10 A at 14.4 V and 0.88 take 163.6 W at the input: over R from 14.3 V the input keeps 12.8 V as long as
// 1.5 V / R is 12.8 A, R 117 mΩ. 0.75 mm² has 24.7 mΩ a metre cold, 31.4 mΩ at the 89 °C of 12.8 A, and the rest of the way, cables and contacts,
// some 11 mΩ: 3.2 m make 111.5 mΩ, 3.4 m 117.8 mΩ.
func TestChargerStarvedByItsCable(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(casesDir, "charged-too-fast.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	const feed = "at: rear, fed by: start end, returns"
	for wire, want := range map[string]string{
		"{size: 6 mm²}":                   "",
		"{size: 0.75 mm², length: 3.2 m}": "",
		"{size: 0.75 mm², length: 3.4 m}": "pulls its input from 14.3 V down to 12.8 V, below which it takes less: it gives 9.9",
	} {
		var got string
		for _, f := range open(assess(t, "starved.yaml", []byte(replaced(t, string(src), []string{feed, "at: rear, fed by: start end, wire: " + wire + ", returns"})))) {
			if f.Rule == "charging-cable-drop" && strings.Contains(f.What, "pulls") {
				got = f.What
			}
		}
		if (got == "") != (want == "") || !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q", wire, got, want)
		}
	}
}

// The same 163.6 W over R from 14.3 V: 4 % of 12 V, 0.48 V, are lost where 13.82 V are left, at 11.84 A over 40.5 mΩ. Of those the
// rest of the way has some 11 mΩ, 0.75 mm² at its 84 °C 31 mΩ a metre: 0.95 m.
func TestInputDropOfACharger(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(casesDir, "charged-too-fast.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	const feed = "at: rear, fed by: start end, returns"
	for _, c := range []struct {
		length string
		want   bool
	}{{"850 mm", false}, {"900 mm", false}, {"1 m", true}, {"3.2 m", true}} {
		got := ""
		for _, f := range open(assess(t, "input.yaml", []byte(replaced(t, string(src), []string{feed, "at: rear, fed by: start end, wire: {size: 0.75 mm², length: " + c.length + "}, returns"})))) {
			if f.Rule == "charging-cable-drop" && strings.Contains(f.What, "the cable to") && strings.Contains(f.What, "loses") {
				got = f.What
			}
		}
		if (got != "") != c.want {
			t.Errorf("%s: %q", c.length, got)
		}
	}
}
