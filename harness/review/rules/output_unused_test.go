package rules_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// An output that positions name and nothing is fed by is said; one that feeds is not.
func TestOutputUnused(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/ok/positions.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for output, want := range map[string]string{"stern": "", "[stern, mast]": "mast of lights feeds nothing"} {
		got := ""
		for _, f := range assess(t, "output", []byte(strings.Replace(string(src), "anchor: stern}", "anchor: "+output+"}", 1))) {
			if f.Rule == "part-unused" {
				got += f.What
			}
		}
		if got != want {
			t.Errorf("%s: %q, want %q", output, got, want)
		}
	}
}

// So is an output of a return to which nothing returns, and a whole switch of a return once.
func TestOutputUnusedInReturn(t *testing.T) {
	for returns, want := range map[string]string{"bar wide": "nothing returns to narrow of bar", "frame": "nothing returns to bar"} {
		got := ""
		for _, f := range assess(t, "output", []byte(example.Design("switches:\n  bar: {rating: 5 A, at: rear, returns to: frame, return wire: {size: 1 mm²}, positions: {off: none, dim: narrow, full: [narrow, wide]}}\n"+
			"loads:\n  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: "+returns+", return wire: {size: 1 mm², length: 200 mm}}\n"))) {
			if f.Rule == "part-unused" {
				got += f.What
			}
		}
		if got != want {
			t.Errorf("returns to %s: %q, want %q", returns, got, want)
		}
	}
}
