package rules_test

import (
	"os"
	"strings"
	"testing"
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
