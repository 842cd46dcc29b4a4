package rules_test

import (
	"os"
	"slices"
	"testing"

	"fusewright/harness/design/figure"
)

// TestPlainFigures: the rules that the reader knows to have figures without a unit
// are those that do.
func TestPlainFigures(t *testing.T) {
	seen := map[string]bool{}
	for _, file := range designFiles(t) {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range assess(t, file, src) {
			plain := f.Figure.Of == ""
			if f.Figure.Given() && plain != slices.Contains(figure.Plain, f.Rule) {
				t.Errorf("%s: %s has the figure %s", file, f.Rule, f.Figure)
			}
			seen[f.Rule] = seen[f.Rule] || f.Figure.Given() && plain
		}
	}
	for _, rule := range figure.Plain {
		if !seen[rule] {
			t.Errorf("no design has %s with a figure", rule)
		}
	}
}
