package compare_test

import (
	"strings"
	"testing"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/proof/fuzztest"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
)

// FuzzReadBaseline: whatever the bytes, there is a baseline or problems that
// name the file; findings matched with it are never more than it has.
func FuzzReadBaseline(f *testing.F) {
	f.Add([]byte(`{"fusewright_baseline": 2, "findings": [{"rule": "voltage-drop", "part": "a", "severity": "fault", "value": 0.07, "limit": 0.05, "of": "share"}, {"rule": "voltage-drop", "part": "a", "wire": "feed", "severity": "danger"}]}`))
	f.Add([]byte(`{"fusewright_baseline": 2, "findings": null}`))
	f.Add([]byte(`{"fusewright_baseline": 1}`))
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
			share := figure.Figure{Value: 0.07, Limit: 0.05, Of: quantity.Share, Worse: figure.Larger}
			found := []*finding.Finding{{Rule: "voltage-drop", Part: "a", Severity: finding.Fault, Figure: share},
				{Rule: "voltage-drop", Part: "a", Wire: "feed", Severity: finding.Fault},
				{Rule: "voltage-drop", Part: "a", Severity: finding.Fault, Figure: share}}
			n := len(b.MarkKnown(found))
			for _, f := range found {
				if f.Known {
					n++
				}
			}
			if n != len(b.Entries) {
				t.Fatalf("%d known and unused of %d entries", n, len(b.Entries))
			}
		})
	})
}
