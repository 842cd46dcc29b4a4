package report

import (
	"strings"
	"testing"
)

// What is said of a further battery's charge at, above and below a fifth, and where none is known.
func TestFurtherBatteryAgainstItsReserve(t *testing.T) {
	for _, c := range []struct {
		lowest, reserve float64
		want            string
	}{
		{0.21, 0.2, "stays above its usual reserve of 20 %"}, {0.2, 0.2, "stays above its usual reserve"},
		{0.19, 0.2, "a discharge below it shortens its life"}, {0.19, 0, "no usual reserve is known"},
	} {
		at := 60.0
		r := Ride{Further: []RideBank{{Name: "house", LowestCharge: &c.lowest, LowestChargeS: &at, UsualReserve: c.reserve}}}
		if got := r.Outcome(); !strings.Contains(got, c.want) || !strings.Contains(got, "house") {
			t.Errorf("%g of %g: %q", c.lowest, c.reserve, got)
		}
	}
}
