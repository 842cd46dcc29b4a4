package harness

import (
	"os"
	"path/filepath"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/proof/fuzztest"
)

// FuzzAssess: whatever design reads goes through every stage, or there are
// problems with a place; twice with the same findings.
func FuzzAssess(f *testing.F) {
	for _, pattern := range []string{"read/ok", "rules/ok", "corpus/clean"} {
		files, err := filepath.Glob("../testdata/" + pattern + "/*.yaml")
		if err != nil || len(files) == 0 {
			f.Fatalf("no seeds in %s: %v", pattern, err)
		}
		for _, file := range files[:min(len(files), 8)] {
			src, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(src)
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		d, err := design.Read("fuzz.yaml", src, nil)
		if err != nil {
			return // the reader's own target
		}
		again, _ := design.Read("fuzz.yaml", src, nil)
		fuzztest.Within(t, func() {
			r, err := Assess(d)
			if err != nil {
				if list, ok := err.(problem.List); !ok || len(list) == 0 || list[0].Pos.Line == 0 {
					t.Fatalf("error is %T %v", err, err)
				}
				return
			}
			second, err := Assess(again)
			if err != nil {
				t.Fatalf("the second time: %v", err)
			}
			if len(r.Findings) != len(second.Findings) {
				t.Fatalf("%d findings, then %d", len(r.Findings), len(second.Findings))
			}
			for i, was := range r.Findings {
				if now := second.Findings[i]; was.What != now.What || was.Pos != now.Pos || was.Severity != now.Severity {
					t.Fatalf("%+v\nthen %+v", was, now)
				}
			}
		})
	})
}
