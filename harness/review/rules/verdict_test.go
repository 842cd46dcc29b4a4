package rules_test

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"fusewright/library"
)

// The limits that rules hold figures against are those that the library has a
// verdict for: a name that is misspelt would quietly be judged at its worst case.
func TestEveryLimitHasItsVerdict(t *testing.T) {
	asked := map[string]bool{}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	held := regexp.MustCompile(`\.held\("([^"]+)"`)
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range held.FindAllSubmatch(src, -1) {
			asked[string(m[1])] = true
			if library.Default().Verdict(string(m[1])) == nil {
				t.Errorf("%s: the library has no verdict for %q", file, m[1])
			}
		}
	}
	for _, v := range library.Default().Verdicts {
		if !asked[v.Limit] {
			t.Errorf("no rule asks for the verdict of %q", v.Limit)
		}
	}
}
