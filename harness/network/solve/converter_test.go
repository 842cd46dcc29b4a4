package solve_test

import (
	"math"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
)

const chargersDesign = `fusewright: 1
title: chargers
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 80 Ah, resistance: 4 mΩ, at: bay}
charging: {regulated: 14.3 V, output: {900 rpm: 50 A, 5000 rpm: 120 A}, idle: 900 rpm, cruise: 2500 rpm}
places: {bay: {ambient: 40 °C}}
wire: {size: 16 mm²}
batteries: {house: {chemistry: AGM, capacity: 110 Ah, resistance: 4 mΩ, at: bay, fed by: [booster, roof, panel, shore]}}
chargers:
  booster: {type: DC-DC charger 30 A, at: bay, fed by: battery}
  roof: {type: MPPT controller 20 A, panel: 100 W, at: bay}
  panel: {type: PWM controller 10 A, panel: 100 W, at: bay}
  shore: {type: shore charger 10 A, at: bay}
situations:
  driving: {engine: cruise, charge: {house: 50 %}}
  resting: {key: off, charge: {house: 50 %}}
  noon: {key: off, sun: 50 %, charge: {house: 50 %}}
  in port: {key: off, shore: yes, charge: {house: 50 %}}
`

// TestChargers holds each charger, into a house battery half full, to what it gives by hand: its rating
// of the DC-DC charger while the engine brings 13.3 V; of the sun 0.94 × 50 W over the volts (MPPT)
// and 50 W / 18.5 V = 2.70 A (PWM); its rating of the shore charger.
func TestChargers(t *testing.T) {
	c := buildtest.Circuit(t, chargersDesign)
	for _, s := range solve.All(c, solve.Options{}) {
		if s.Status != solve.Converged {
			t.Fatalf("%s: %s, %s", s.Situation.Name, s.Status, s.Why)
		}
		for _, p := range c.Parts {
			out := p.Output()
			if out == nil {
				continue
			}
			want := map[string]float64{"driving booster": 30, "noon roof": 0.94 * 50 / s.Volts(out), "noon panel": 50 / 18.5, "in port shore": 10}[s.Situation.Name+" "+p.Name]
			got := -s.Amps(out)
			if math.Abs(got-want) > 1e-6 {
				t.Errorf("%s: %s gives %.6f A, not %.6f", s.Situation.Name, p.Name, got, want)
			}
			if in := p.Converts(); in != nil {
				takes, gives := s.Amps(in)*s.Volts(in), got*s.Volts(out)
				if math.Abs(takes-gives/0.88) > 1e-6 {
					t.Errorf("%s: %s takes %.6f W and gives %.6f", s.Situation.Name, p.Name, takes, gives)
				}
			}
		}
	}
}

// TestChargerGivesWay: over a feed of 60 mΩ the charger would pull its input below 12.8 V, and
// takes only what leaves it there.
func TestChargerGivesWay(t *testing.T) {
	c := buildtest.Circuit(t, chargersDesign)
	d := c.Design
	for _, p := range c.Parts {
		in := p.Converts()
		if in == nil {
			continue
		}
		s := solve.Solve(c, d.Situations[0], solve.Options{Changes: []solve.Change{solve.SetOhm(in.A.FedBy()[0], 0.06)}})
		if v := s.Volts(in); s.Status != solve.Converged || math.Abs(v-12.8) > 1e-3 || !(s.Amps(in) > 20) {
			t.Errorf("%s: %.4f V, %.2f A", s.Status, v, s.Amps(in))
		}
	}
}
