package report_test

import (
	"strings"
	"testing"

	"fusewright/harness/design/caution"
	"fusewright/render/report"
)

// TestWordsFollowTheKind: a boat is neither parked nor a vehicle in its budget, nor
// has it brakes; what is on land is no boat.
func TestWordsFollowTheKind(t *testing.T) {
	for _, c := range []struct {
		file, caution string
		says, not     []string
	}{
		{"../../designs/reed-skiff.yaml", caution.ReportAfloat + " " + caution.Petrol,
			[]string{" moored.", "The boat's own loads", "8 h with it off"}, []string{"parked", "vehicle"}},
		{"../../designs/fen-runner.yaml", caution.Report,
			[]string{" parked.", "The vehicle's own loads", "1 h with it off"}, []string{"moored", "boat"}},
	} {
		r := reviewOf(t, c.file)
		b := report.NewBudget(r)
		text := b.Budget.Standby() + b.Budget.Basis()
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in %s", c.file, want, text)
			}
		}
		for _, bad := range c.not {
			if strings.Contains(text, bad) {
				t.Errorf("%s: %q in %s", c.file, bad, text)
			}
		}
		if got := report.CautionOf(r.Design); got != c.caution {
			t.Errorf("%s: %q", c.file, got)
		}
	}
}
