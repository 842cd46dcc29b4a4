package sizing_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/sizing"
)

const chargersOpen = `fusewright: 1
title: chargers left open
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 80 Ah, resistance: 4 mΩ, at: bay}
charging: {regulated: 14.4 V, output: {900 rpm: %s, 5000 rpm: 150 A}, idle: 900 rpm, cruise: 2500 rpm}
vehicle loads: {machine: {power: 144 W, when: running}}
places: {bay: {ambient: 30 °C}}
wire: {size: 16 mm², slack: 500 mm}
batteries: {house: {chemistry: AGM, capacity: %s, resistance: 4 mΩ, at: bay, fed by: open}}
chargers: {open: {type: auto, at: bay%s}}
situations: {waiting: {engine: idle, charge: {house: 30 %%}}, driving: {engine: cruise}}
`

// TestChargersLeftOpen, by hand. AGM may be charged with 0.4 of its capacity an hour: 40 A of 100 Ah, 39.6 A of 99 Ah. A
// DC-DC charger of 20 A takes 14.4/(0.88 × 14.4) × 20 = 22.7 A, of 30 A 34.1 A; the machine takes 10 A: of 33 A output 23 A
// are to spare, of 32 A 22 A. Panels: 0.94 × 255 W / 12 V = 19.98 A, 256 W 20.05 A. Shore: a fifth of 100 Ah is 20 A, of 99 Ah less.
func TestChargersLeftOpen(t *testing.T) {
	for _, c := range []struct{ output, capacity, open, want, why string }{
		{"100 A", "100 Ah", ", fed by: battery", "DC-DC charger 40 A 12 V", "the most that house should be charged with, 40"},
		{"100 A", "99 Ah", ", fed by: battery", "DC-DC charger 30 A 12 V", "the most that house should be charged with, 39.6 A"},
		{"33 A", "100 Ah", ", fed by: battery", "DC-DC charger 20 A 12 V", `what the charging system has to spare in "waiting"`},
		{"32 A", "100 Ah", ", fed by: battery", "DC-DC charger 10 A 12 V", `what the charging system has to spare in "waiting"`},
		{"100 A", "100 Ah", ", panel: 255 W", "MPPT controller 20 A 12 V", "the power of its panels, 20"},
		{"100 A", "100 Ah", ", panel: 256 W", "MPPT controller 30 A 12 V", "the power of its panels, 20"},
		{"100 A", "100 Ah", "", "shore charger 20 A 12 V", "a fifth of the capacity of house per hour, 20"},
		{"100 A", "99 Ah", "", "shore charger 10 A 12 V", "a fifth of the capacity of house per hour, 19.8 A"},
	} {
		d := buildtest.Design(t, fmt.Sprintf(chargersOpen, c.output, c.capacity, c.open))
		for range 2 { // choosing again gives the same
			p, err := sizing.Complete(d)
			if err != nil {
				t.Fatal(err)
			}
			got := p.Choices[0]
			if got.Value != c.want || !strings.HasPrefix(got.Decided, c.why) || d.Chargers[0].Type.Name != c.want || got.Set[0].Value != c.want {
				t.Errorf("%+v: %s by %s", c, got.Value, got.Decided)
			}
		}
	}
}
