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

// In the sun and on shore power the charger holds the relay of two lead batteries, not they; of lithium it stays all the same.
func TestSensingRelayUnderACharger(t *testing.T) {
	const agm = "house: {chemistry: AGM, capacity: 30 Ah, rate: 10 h"
	for from, kind := range map[string]string{"sun: 75 %": "MPPT controller 20 A, panel: 100 W", "shore: yes": "shore charger 20 A"} {
		for store, want := range map[string]int{agm: 0, "house: {chemistry: LiFePO4, capacity: 30 Ah": 1} {
			text := house(t, agm, store, "fed by: house end, wire", "fed by: [house end, charger end], wire",
				"fuses:\n", "fuses:\n  charger end: {type: blade C, rating: 20 A, at: rear, fed by: charger, wire: {length: 120 mm}}\n",
				"relays:\n", "chargers:\n  charger: {type: "+kind+", at: rear, returns to: frame}\nrelays:\n",
				"situations:\n", "situations:\n  at the lake: {key: off, on: [cabin lamp], "+from+"}\n")
			n := 0
			for _, f := range open(assess(t, "house.yaml", text)) {
				if f.Rule == "sensing-relay-stays" {
					n++
				}
			}
			if n != want {
				t.Errorf("%s, %s: %d findings, want %d", from, store, n, want)
			}
		}
	}
}
