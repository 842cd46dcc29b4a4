package rules

import (
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/study/budget"
)

// TestHouseMakesUp: what a further battery gives is not said of the first, which takes 114 mA meanwhile.
func TestHouseMakesUp(t *testing.T) {
	house := &design.Bank{}
	house.Name = "house"
	for _, c := range []struct {
		batteryA, houseA float64
		want, not        string
	}{
		{-0.114, 88.9, "the battery holds 13.2 V; house makes up 88.9 A for 30 min when full", "takes"},
		{-0.114, -2, "where it still takes 114 mA", "house"},
		{5, 88.9, "the battery falls to 13.2 V and makes up 5 A", "house"},
	} {
		l := &budget.Line{BusV: 13.2, BatteryA: c.batteryA, BatteryHours: 1, Banks: []budget.BankLine{{Bank: house, A: c.houseA, Hours: 0.5}}}
		if got := strings.ReplaceAll(batteryDoes(l), ".00", ""); !strings.Contains(got, c.want) || strings.Contains(got, c.not) {
			t.Errorf("%g A, house %g A: %s", c.batteryA, c.houseA, got)
		}
	}
}
