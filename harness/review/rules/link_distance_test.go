package rules_test

import (
	"os"
	"strings"
	"testing"
)

// A fuse in the link at a further battery is its own up to twice the limit of 178 mm, and then too
// far from it; beyond that it is the other end's.
func TestLinkFuseTooFar(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/link-end-unfused.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for lengthMm, want := range map[string]string{"170": "", "200": "fuse-too-far", "350": "fuse-too-far", "360": "link-end-unfused"} {
		text := strings.NewReplacer("fed by: charging relay, wire: {size: 4 mm²}", "fed by: house end, wire: {size: 4 mm², length: "+lengthMm+" mm}",
			"  lamp end:", "  house end: {type: blade C, rating: 20 A, at: rear, fed by: charging relay, wire: {size: 4 mm²}}\n  lamp end:").Replace(string(src))
		got := ""
		for _, f := range assess(t, "link", []byte(text)) {
			if f.Rule == "fuse-too-far" || f.Rule == "link-end-unfused" {
				got += f.Rule
			}
		}
		if got != want {
			t.Errorf("%s mm: %q, want %q", lengthMm, got, want)
		}
	}
}
