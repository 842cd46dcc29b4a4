package compare_test

import (
	"slices"
	"testing"

	"fusewright/harness/design/figure"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
)

func found(rule string, severity finding.Severity, value, limit float64) *finding.Finding {
	return &finding.Finding{Rule: rule, Part: "lamp", Severity: severity, Figure: figure.New(value, limit, "A", figure.Larger)}
}

func accepted(f *finding.Finding) *finding.Finding {
	f.Accepted = "known"
	return f
}

// Each finding is one entry, which says what it was and is.
func TestStanding(t *testing.T) {
	covering := found("a", finding.Danger, 30, 16)
	covering.Covers = []*finding.Finding{found("b", finding.Advice, 40, 16)}
	mild := found("a", finding.Advice, 30, 16)
	mild.Covers = []*finding.Finding{found("b", finding.Danger, 40, 16)}
	for _, tt := range []struct {
		name     string
		was, now []*finding.Finding
		want     []string
	}{
		{"new", nil, []*finding.Finding{found("a", finding.Danger, 30, 16)}, []string{"danger"}},
		{"gone", []*finding.Finding{found("a", finding.Danger, 30, 16)}, nil, []string{"danger"}},
		{"graver and worse", []*finding.Finding{found("a", finding.Advice, 20, 16)}, []*finding.Finding{found("a", finding.Danger, 30, 16)},
			[]string{"advice → danger (20 A → 30 A of 16 A)"}},
		{"milder", []*finding.Finding{found("a", finding.Danger, 30, 16)}, []*finding.Finding{found("a", finding.Advice, 20, 16)},
			[]string{"danger → advice"}},
		{"worse, of another limit", []*finding.Finding{found("a", finding.Fault, 30, 16)}, []*finding.Finding{found("a", finding.Fault, 30, 10)},
			[]string{"fault, worse (30 A of 16 A → 30 A of 10 A)"}},
		{"no longer accepted", []*finding.Finding{accepted(found("a", finding.Fault, 30, 16))}, []*finding.Finding{found("a", finding.Fault, 30, 16)},
			[]string{"accepted fault → fault"}},
		{"the worst first, grown or new", []*finding.Finding{found("a", finding.Danger, 30, 16)},
			[]*finding.Finding{found("b", finding.Advice, 30, 16), found("a", finding.Danger, 40, 16), found("c", finding.Fault, 30, 16)},
			[]string{"danger, worse (30 A → 40 A of 16 A)", "fault", "advice"}},
		{"worse, and covered by a new one", []*finding.Finding{found("b", finding.Advice, 30, 16)}, []*finding.Finding{covering}, []string{"danger"}},
		{"worse, and covered by a milder one", []*finding.Finding{found("b", finding.Danger, 30, 16)}, []*finding.Finding{mild},
			[]string{"danger, worse (30 A → 40 A of 16 A)", "advice"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			old, now := *reviewtest.Of(t, lamp), *reviewtest.Of(t, lamp)
			old.Findings, now.Findings = tt.was, tt.now
			var got []string
			for _, f := range compare.Reviews(&old, &now).Findings {
				got = append(got, f.Standing())
			}
			if !slices.Equal(got, tt.want) {
				t.Errorf("%q, want %q", got, tt.want)
			}
		})
	}
}
