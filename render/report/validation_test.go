package report_test

import (
	"bytes"
	"flag"
	"os"
	"testing"

	"fusewright/harness/formula/validation"
	"fusewright/render/report"
)

var update = flag.Bool("update", false, "rewrite golden files")

// TestValidationPage keeps docs/validation.md as the program writes it, and
// refuses values on the unsafe side where no table governs.
func TestValidationPage(t *testing.T) {
	list := validation.Comparisons()
	for _, c := range list {
		if c.Unsafe > 0 && !c.Governed {
			t.Errorf("%s against %s: %d values on the unsafe side", c.What, c.Source, c.Unsafe)
		}
	}
	var page bytes.Buffer
	if err := report.WriteValidation(&page, list); err != nil {
		t.Fatal(err)
	}
	const path = "../../docs/validation.md"
	if *update {
		if err := os.WriteFile(path, page.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(page.Bytes(), want) {
		t.Error("docs/validation.md is stale: run go test ./render/report -update and look at the difference")
	}
}
