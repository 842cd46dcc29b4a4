package harness_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/library"
)

// TestReadmeDesign keeps the whole design shown in the README readable and
// without findings.
func TestReadmeDesign(t *testing.T) {
	page, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(page), "```yaml\nfusewright: 1\n")
	src, _, closed := strings.Cut(rest, "```")
	if !ok || !closed {
		t.Fatal("README.md shows no whole design")
	}
	d, err := design.Read("README.md", []byte("fusewright: 1\n"+src), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	review, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range review.Findings {
		t.Errorf("%s: %s [%s]", f.Pos, f.What, f.Rule)
	}
}
