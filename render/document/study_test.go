package document_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/render/document"
)

// TestStudyPages: every table and a time–current picture of every fuse that
// protects a wire, all text on the page.
func TestStudyPages(t *testing.T) {
	r := reviewtest.File(t, "../../testdata/reports/two-fuses.yaml")
	sheets, err := document.Study(r)
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, s := range sheets {
		all.WriteString(textOf(t, s))
	}
	text := all.String()
	for _, want := range []string{"Bolted shorts", "Fuses and their loads", "Fuses in series", "Returns lost",
		"Relay contacts welded", "Regulator failed high", "Greatest current: full battery", "wire damaged", "Isolate"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	pictures := 0
	for _, f := range r.Protection.Fuses {
		if w := f.Worst(); w != nil {
			pictures++
			if want := f.Branch.Fuse.Ref + " "; !strings.Contains(text, want) {
				t.Errorf("no picture of %s", f.Branch.Fuse.Ref)
			}
		}
	}
	if got := strings.Count(text, "greatest short"); got != pictures || pictures == 0 {
		t.Errorf("%d pictures for %d fuses", got, pictures)
	}
}
