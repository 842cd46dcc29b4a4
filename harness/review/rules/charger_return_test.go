package rules_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// A short inside a charger is fed by the battery that it charges, through that battery's fuse: its
// return is held against that as a load's is. By hand, in 40 °C: 0.75 mm² carries some 15 A, under half of a
// fuse of 30 A, 6 mm² more than it; a fuse of 10 A is below all of them. The DC-DC charger's has
// the fuse of 50 A at its input too.
func TestChargerReturns(t *testing.T) {
	src, err := os.ReadFile("../../../designs/hay-wain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const roof, booster = "return wire: {size: 6 mm², length: 400 mm}", "return wire: {size: 10 mm², length: 400 mm}"
	for _, c := range []struct{ name, was, is, want string }{
		{"as it is", roof, roof, ""},
		{"solar, thin", roof, strings.Replace(roof, "6", "0.75", 1), "the way from the battery back into roof charger is protected by fuse F3 (roof end, 30 A)"},
		{"solar, thick enough", roof, strings.Replace(roof, "6", "4", 1), ""},
		{"booster, thin", booster, strings.Replace(booster, "10", "1", 1), "return-below-fuse"},
	} {
		text := strings.Replace(string(src), c.was, c.is, 1)
		var got []string
		for _, f := range assess(t, "hay-wain.yaml", []byte(text)) {
			if f.Rule == "return-below-fuse" {
				got = append(got, f.Rule+" "+f.Severity.String()+" "+f.What)
			}
		}
		if c.want == "" && len(got) > 0 || c.want != "" && (len(got) != 1 || !strings.Contains(got[0], c.want) || !strings.Contains(got[0], "danger")) {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// The wires of a charger lose at most 2 % at its rated current, whatever the sun, as charging leads do: 20 A lose 0.24 V
// over 12 mΩ, of which 1 m of 6 mm² are some 3.1 mΩ.
func TestChargerDrop(t *testing.T) {
	src, err := os.ReadFile("../../../designs/hay-wain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for length, want := range map[string]bool{"400 mm": false, "800 mm": false, "4 m": true} {
		text := strings.Replace(string(src), "return wire: {size: 6 mm², length: 400 mm}", "return wire: {size: 6 mm², length: "+length+"}", 1)
		got := false
		for _, f := range assess(t, "hay-wain.yaml", []byte(text)) {
			if f.Rule == "charging-cable-drop" {
				t.Log(f.What)
				got = f.Severity == finding.Advice && strings.HasPrefix(f.What, "between roof charger and the battery ")
			}
		}
		if got != want {
			t.Errorf("return of %s: found %t, want %t", length, got, want)
		}
	}
}
