package remedy_test

import (
	"path/filepath"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/finding"
)

// TestAppliedRemedies: a remedy that is put into the design clears what it says in a review of its own, in which sizing
// chooses anew what is left open. The designs are those of the catalogue, one for each rule.
func TestAppliedRemedies(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/rules/*.yaml")
	type place struct{ rule, part string }
	at := func(list []*finding.Finding) map[place]int {
		n := map[place]int{}
		for _, f := range finding.All(list) {
			if f.Accepted == "" {
				n[place{f.Rule, f.Part}]++
			}
		}
		return n
	}
	remedies := 0
	for _, file := range files {
		r := reviewtest.File(t, file)
		before := at(r.Findings)
		for _, c := range r.Remedies().Causes {
			if c.Remedy == nil {
				continue
			}
			remedies++
			back := c.Remedy.Put()
			again, err := harness.Assess(r.Design)
			back()
			if err != nil {
				t.Errorf("%s: %s: %s: %v", file, c.Remedy.About, c.Remedy.Will, err)
				continue
			}
			after := at(again.Findings)
			for p, n := range at(c.Remedy.Mends) {
				if after[p] > before[p]-n {
					t.Errorf("%s: %s: %s: clears %d of %d %s at %s, but %d are left", file, c.Remedy.About, c.Remedy.Will, n, before[p], p.rule, p.part, after[p])
				}
			}
		}
	}
	if len(files) < 100 || remedies < 30 {
		t.Errorf("%d designs, %d remedies", len(files), remedies)
	}
}
