package rules_test

import (
	"strings"
	"testing"
)

// Resting volts at nine tenths, by the library: AGM 12.72 V, flooded 12.5 V and gel 12.77 V, all below the
// 12.8 V at which the relay opens; LiFePO4 13.4 V, which falls to 12.8 V at 20 %.
func TestSensingRelayStays(t *testing.T) {
	const agm, first = "house: {chemistry: AGM, capacity: 30 Ah, rate: 10 h", "battery: {chemistry: AGM, capacity: 20 Ah, rate: 10 h"
	for _, c := range []struct {
		name, house, battery string
		want                 bool
	}{
		{"AGM", agm, first, false},
		{"flooded", "house: {chemistry: flooded, capacity: 30 Ah", first, false},
		{"two of gel", "house: {chemistry: gel, capacity: 30 Ah", "battery: {chemistry: gel, capacity: 20 Ah", false},
		{"lithium", "house: {chemistry: LiFePO4, capacity: 30 Ah", first, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got string
			limit := 0.0
			for _, f := range open(assess(t, "house.yaml", house(t, agm, c.house, first, c.battery))) {
				if f.Rule == "sensing-relay-stays" {
					got, limit = f.What, f.Figure.Limit
				}
			}
			if c.want && !(limit > 0.899 && limit < 0.901) {
				t.Errorf("held against %g", limit)
			}
			if (got != "") != c.want || c.want && !strings.Contains(got, "with about 20 % of the charge left") {
				t.Errorf("%q", got)
			}
		})
	}
}
