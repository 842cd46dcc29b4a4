package rules_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What changes the sound 24 V machine with a converter of 20 A for 12 V, and what is said then. The 40 W of the work
// lamp and the 20 W of the radio are 4.35 A at 13.8 V; the relay's coil and the 6 V lamps take 0.36 A at the most.
func TestBehindAConverter(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(casesDir, "ok", "converter.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	const lamp, radio = "power: 40 W, behaves: constant power", "{type: radio, at: dash, fed by: radio fuse, returns"
	const thick = "rating: 5 A, at: dash, fed by: dropper, wire: {size: 4 mm²,"
	for name, c := range map[string]struct {
		old, new, want string
	}{
		"a 24 V part behind it":      {lamp, lamp + ", rated at: 24 V", "load-undervoltage"},
		"12 V said":                  {lamp, lamp + ", rated at: 12 V", ""},
		"a 12 V part before it":      {radio, "{type: radio, rated at: 12 V, at: dash, fed by: dropper fuse, own switch: yes, wire: {size: 4 mm²}, returns", "load-overvoltage"},
		"a coil for 24 V":            {"form: mini make\n", "form: mini make 24 V\n", "relay-coil-voltage"},
		"a wire of 20 A":             {thick, "rating: 5 A, at: dash, fed by: dropper, wire: {size: 1.5 mm²,", ""},
		"a wire for less than 20 A":  {thick, "rating: 5 A, at: dash, fed by: dropper, wire: {size: 0.75 mm²,", "charging-cable-thin"},
		"a fuse that may stay whole": {"lamp fuse: {type: blade C, rating: 7.5 A", "lamp fuse: {type: blade C, rating: 20 A", "short-too-weak"},
	} {
		got := map[string]bool{}
		for _, f := range open(assess(t, "converter.yaml", []byte(replaced(t, string(src), []string{c.old, c.new})))) {
			switch f.Rule {
			case "load-undervoltage", "load-overvoltage", "relay-coil-voltage", "charging-cable-thin", "short-too-weak", "converter-overloaded":
				got[f.Rule] = true
			}
		}
		if len(got) > 1 || c.want == "" && len(got) > 0 || c.want != "" && !got[c.want] {
			t.Errorf("%s: %v, want %q", name, got, c.want)
		}
	}
}

// 10 A at the 13.8 V that it holds are 138 W, of which two of three heaters draw 40 W each.
func TestConverterRating(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(casesDir, "converter-overloaded.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for power, want := range map[string]bool{"57.9 W": false, "58 W": false, "58.2 W": true} {
		got := false
		rated := strings.NewReplacer("behaves: resistor", "behaves: constant power", "seat heater: {power: 40 W", "seat heater: {power: "+power)
		for _, f := range open(assess(t, "rating.yaml", []byte(rated.Replace(string(src))))) {
			got = got || f.Rule == "converter-overloaded" && strings.Contains(f.What, "it gives 10 A")
		}
		if got != want {
			t.Errorf("%s: overloaded %t", power, got)
		}
	}
}

// Two heaters of 20 W at 6 V in series are 3.33 A at 12 V, 3.83 A at 13.8 V, once: with the 5.80 A of the other two
// less than the converter gives; of 24 W each 4.6 A, which is more.
func TestConverterRatingOfAString(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(casesDir, "converter-overloaded.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for power, want := range map[string]bool{"20 W": false, "24 W": true} {
		text := strings.NewReplacer("behaves: resistor", "behaves: constant power").Replace(string(src))
		first, _, _ := strings.Cut(text, "  seat heater:")
		text = first + "  seat heater: {power: " + power + ", rated at: 6 V, behaves: resistor, at: rear, fed by: seat fuse}\n" +
			"  back heater: {power: " + power + ", rated at: 6 V, behaves: resistor, at: rear, in series with: seat heater, returns to: frame}\n"
		got := false
		for _, f := range open(assess(t, "string.yaml", []byte(text))) {
			got = got || f.Rule == "converter-overloaded"
		}
		if got != want {
			t.Errorf("%s: overloaded %t", power, got)
		}
	}
}
