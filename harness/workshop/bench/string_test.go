package bench_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/workshop/bench"
)

// Each battery of a string is read by itself: AGM rests at 12.8 V full and at 12.64 V four fifths full, so 12.72 V between, the
// meter's error at both ends; then how far they are apart, 100 mV at most.
func TestBatteriesInSeriesAreReadOneByOne(t *testing.T) {
	c := buildtest.Circuit(t, buildtest.File(t, "../../../testdata/rules/ok/batteries-in-series.yaml"))
	for _, s := range bench.Make(c).Sections {
		if s.Kind != bench.Strings {
			continue
		}
		list := s.Checks()
		if len(list) != 3 || list[0].Name != "battery, 1 of 2" || list[1].Name != "battery, 2 of 2" || !strings.HasPrefix(list[2].Where, "highest less lowest") || list[2].High != 0.1 {
			t.Fatalf("%+v", list)
		}
		for _, x := range list[:2] {
			low, high := 12.64*(1-bench.VoltShare)-bench.VoltFixedV/2, 12.8*(1+bench.VoltShare)+bench.VoltFixedV/2
			if math.Abs(x.Nominal-12.72) > 1e-9 || math.Abs(x.Low-low) > 1e-6 || math.Abs(x.High-high) > 1e-6 {
				t.Errorf("%s: %g, %g to %g V, want 12.72, %g to %g", x.Name, x.Nominal, x.Low, x.High, low, high)
			}
		}
		return
	}
	t.Error("no section of batteries in series")
}
