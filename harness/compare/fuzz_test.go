package compare_test

import (
	"strings"
	"testing"

	"fusewright/harness/compare"
	"fusewright/harness/finding"
	"fusewright/harness/fuzztest"
)

// FuzzReadBaseline: whatever the bytes, there is a baseline or problems that
// name the file; findings matched with it are never more than it has.
func FuzzReadBaseline(f *testing.F) {
	f.Add([]byte(`{"fusewright_baseline": 1, "findings": [{"rule": "voltage-drop", "part": "a", "severity": "fault"}]}`))
	f.Add([]byte(`{"fusewright_baseline": 1, "findings": null}`))
	f.Add([]byte(`{"fusewright_baseline": 2}`))
	f.Add([]byte(`[]`))
	f.Fuzz(func(t *testing.T, src []byte) {
		fuzztest.Within(t, func() {
			b, err := compare.ReadBaseline("b.json", src)
			if (b == nil) == (err == nil) {
				t.Fatalf("baseline %v and error %v", b, err)
			}
			if err != nil {
				if !strings.HasPrefix(err.Error(), "b.json") || strings.ContainsAny(err.Error(), "\x1b\u202e") {
					t.Fatalf("error %q", err)
				}
				return
			}
			found := []*finding.Finding{{Rule: "voltage-drop", Part: "a", Severity: finding.Fault},
				{Rule: "voltage-drop", Part: "a", Severity: finding.Fault}}
			known, unused := b.Known(found)
			n := len(unused)
			for _, k := range known {
				if k {
					n++
				}
			}
			if n != len(b.Entries) {
				t.Fatalf("%d known and unused of %d entries", n, len(b.Entries))
			}
		})
	})
}
