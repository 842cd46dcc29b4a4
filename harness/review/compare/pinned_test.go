package compare

import (
	"math"
	"testing"
)

// What counts as a change: a milliampere or a tenth of a day, and half a per
// cent of the figure.
func TestLeastChange(t *testing.T) {
	for _, c := range []struct {
		name     string
		old, now float64
		least    float64
		listed   bool
	}{
		{"less than a milliampere", 0.1, 0.1009, leastA, false},
		{"a milliampere and a hair", 0.1, 0.10101, leastA, true},
		{"a milliampere less and a hair", 0.1, 0.09899, leastA, true},
		{"0.4 % of 10 A", 10, 10.04, leastA, false},
		{"0.49 % of 10 A", 10, 10.049, leastA, false},
		{"0.51 % of 10 A", 10, 10.051, leastA, true},
		{"less than a tenth of a day", 10, 10.09, leastDays, false},
		{"more than a tenth of a day", 10, 10.101, leastDays, true},
		{"less than half a per cent of 40 days", 40, 40.19, leastDays, false},
		{"more than half a per cent of 40 days", 40, 40.21, leastDays, true},
		{"the same", 1, 1, leastA, false},
		{"any piece to buy", 1, 2, 0, true},
		{"gone", 1, math.NaN(), leastA, true},
	} {
		if got := len(addAmount(nil, Amount{Old: c.old, New: c.now}, c.least, 1)) == 1; got != c.listed {
			t.Errorf("%s: listed %t", c.name, got)
		}
	}
}
