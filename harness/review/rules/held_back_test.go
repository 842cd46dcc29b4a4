package rules_test

import (
	"os"
	"strings"
	"testing"
)

// A bulb of 21 W takes 1.75 A at 12 V and I = 1.75·(V/12)^0.55 at others. At 14.1 V behind 3 Ω it keeps 9.4 V (1.53 A),
// two thirds: it is meant to be dimmer than the library's 10.5 V. Behind 8 Ω it keeps 5.2 V (1.1 A), 37 %: it does not do its
// work. A minimum of the design holds whatever is before it, and that of a critical load.
func TestHeldBackByResistor(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/resistor-overload.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, ohm, bulb, want string }{
		{"dimmed", "3 Ω", "", ""},
		{"not doing its work", "8 Ω", "", "needs 10.5 V"},
		{"its own minimum", "3 Ω", ", minimum voltage: 11 V", "needs 11.0 V"},
		{"critical", "3 Ω", ", critical: yes", "needs 10.5 V"},
	} {
		text := strings.NewReplacer("resistance: 5 Ω, rating: 5 W", "resistance: "+c.ohm+", rating: 90 W",
			"{resistance: 7 Ω,", "{type: bulb 21 W"+c.bulb+",").Replace(string(src))
		said := ""
		for _, f := range assess(t, c.name, []byte(text)) {
			if f.Rule == "load-undervoltage" {
				said += f.What
			}
			if f.Rule == "voltage-drop" {
				t.Errorf("%s: %s", c.name, f.What)
			}
		}
		if (said == "") != (c.want == "") || !strings.Contains(said, c.want) {
			t.Errorf("%s: %q, want %q", c.name, said, c.want)
		}
	}
}

// A short behind 5 Ω draws 14.2 V / 5 Ω = 2.8 A, which a fuse of 5 A carries: the thermal fuse of the resistor
// clears it, in a feed as in a return, and without one nothing does.
func TestShortBehindThermalFuse(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/resistor-overload.yaml")
	if err != nil {
		t.Fatal(err)
	}
	inReturn := strings.NewReplacer("at: battery tray, fed by: lamps} # want", "at: battery tray, returns to: frame} # want",
		"fed by: dropper, returns to: frame", "fed by: lamps, returns to: dropper").Replace(string(src))
	for _, text := range []string{string(src), inReturn} {
		for old, want := range map[string]bool{"": false, "thermal fuse: yes, ": true} {
			weak := false
			for _, f := range assess(t, "short", []byte(strings.Replace(text, old, "", 1))) {
				weak = weak || f.Rule == "short-too-weak"
			}
			if weak != want {
				t.Errorf("without %q: too weak %t, want %t", old, weak, want)
			}
		}
	}
}
