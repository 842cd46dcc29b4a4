package rules_test

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

// Study and check give one answer on which fuses cannot break a short: those with none
// before them, by the same capacity.
func TestBreakingIsOneAnswer(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/corpus-clean-trade/2*.yaml")
	if err != nil || len(files) != 10 {
		t.Fatal(files, err)
	}
	named := 0
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d, err := design.Read(file, src, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		r, err := harness.Assess(d)
		if err != nil {
			t.Fatal(err)
		}
		check, study := map[string]bool{}, map[string]bool{}
		for _, f := range r.Findings {
			if f.Rule == "fuse-breaking-capacity" {
				check[f.Ref] = true
			}
		}
		for _, s := range r.Faults.Shorts {
			if b := s.Results[fault.Strong].Exceeded; b != nil {
				study[b.Fuse.Ref] = true
			}
		}
		if a, b := slices.Sorted(maps.Keys(check)), slices.Sorted(maps.Keys(study)); !slices.Equal(a, b) {
			t.Errorf("%s: check names %v, study %v", file, a, b)
		}
		named += len(check)
	}
	if named == 0 {
		t.Error("no fuse is named")
	}
}
