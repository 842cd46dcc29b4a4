package harness_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/reviewtest"
)

// TestReadmeDesign keeps the whole design shown in the README readable and
// without findings.
func TestReadmeDesign(t *testing.T) {
	page := buildtest.File(t, "../README.md")
	_, rest, ok := strings.Cut(string(page), "```yaml\nfusewright: 1\n")
	src, _, closed := strings.Cut(rest, "```")
	if !ok || !closed {
		t.Fatal("README.md shows no whole design")
	}
	review := reviewtest.Of(t, "fusewright: 1\n"+src)
	for _, f := range review.Findings {
		t.Errorf("%s: %s [%s]", f.Pos, f.What, f.Rule)
	}
}
