package budget_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/budget"
)

// A second alternator is said beside the balance, hot: 45 A at 1500 rpm and 58 A at 3000 rpm are 54.53 A at 2600 rpm, 40.9 A less
// a quarter; 18 A at 700 rpm and 45 A at 1500 rpm are 19.69 A at 750 rpm, 14.8 A less a quarter. It charges the house battery alone.
func TestFurtherAlternator(t *testing.T) {
	b := budget.Compute(buildtest.Circuit(t, buildtest.Machines), nil)
	if len(b.Further) != 1 || strings.Join(b.Further[0].To, " ") != "house" {
		t.Fatalf("%+v", b.Further)
	}
	if last := b.Further[0].Output[len(b.Further[0].Output)-1]; last.RPM != 3000 || math.Abs(last.CurrentA-43.5) > 1e-9 {
		t.Errorf("its curve ends at %+v", last)
	}
	for _, rpm := range []float64{2600, 0, 750, 2600} {
		b.Lines = append(b.Lines, &budget.Line{Situation: &design.Situation{EngineRPM: rpm}})
	}
	if got, want := b.Beside(), " Beside the charging system starboard gives house up to 14.8 A at 750 rpm and 40.9 A at 2600 rpm"+budget.Uncounted; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := budget.BesideAt(nil, budget.Uncounted, 750); got != "" {
		t.Errorf("without one: %q", got)
	}
}
