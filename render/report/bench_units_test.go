package report

import (
	"math"
	"testing"

	"fusewright/harness/design/quantity"
	"fusewright/harness/workshop/bench"
)

// The readings of wires and returns stay in milliohms above an ohm too, those of
// coils in ohms: one unit in a column.
func TestOneUnitInAColumn(t *testing.T) {
	for _, k := range []struct {
		kind                bench.Kind
		nominal, low, high  float64
		plain               float64
		expected, allowance string
	}{
		{bench.Continuity, 0.00136, math.NaN(), 0.00368, 0, "1.36 mΩ", "3.68 mΩ max"},
		{bench.Continuity, 0.9999, math.NaN(), 1.25, 0, "1000 mΩ", "1250 mΩ max"},
		{bench.Polarity, 0.00729, math.NaN(), 0.0125, 0.2126, "7.29 mΩ", "12.5 mΩ max; two-wire meter 220 mΩ max"},
		{bench.Polarity, 1.05, math.NaN(), 1.3, 0, "1050 mΩ", "1300 mΩ max"},
		{bench.Coils, 79.5, 68.9, 91.9, 0, "79.5 Ω", "68.9 to 91.9 Ω"},
		{bench.Coils, 1180, 950, 1420, 0, "1180 Ω", "950 to 1420 Ω"},
		{bench.Isolation, math.Inf(1), 1e6, math.NaN(), 0, "open", "1 MΩ min"},
	} {
		c := &bench.Check{Quantity: quantity.Resistance, Nominal: k.nominal, Low: k.low, High: k.high, PlainHigh: k.plain}
		if got := expected(k.kind, c); got != k.expected {
			t.Errorf("%s: expected %q, want %q", k.kind, got, k.expected)
		}
		if got := allowed(k.kind, c); got != k.allowance {
			t.Errorf("%s: allowed %q, want %q", k.kind, got, k.allowance)
		}
	}
}
