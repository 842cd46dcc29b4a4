package solve_test

import (
	"math"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
)

// A motor of 120 W at 12 V draws 10 A whatever its voltage: through a contact of 5 mΩ
// of each relay, 50 mV, either way round. With both coils on, and with none, its ends
// are at one potential and it stands.
func TestMotorBetweenRelays(t *testing.T) {
	c := buildtest.Circuit(t, `fusewright: 1
title: a lift on two relays
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 20 Ah, resistance: 10 mΩ, at: tray}
places: {tray: {ambient: 40 °C}}
wire: {insulation: ISO 6722 thin wall class B, size: 2.5 mm²}
fuses:
  main: {type: blade C, rating: 20 A, at: tray, fed by: battery}
switches:
  up: {rating: 5 A, at: tray, fed by: main}
  down: {rating: 5 A, at: tray, fed by: main}
relays:
  raise: {form: mini changeover, at: tray, fed by: main, returns to: battery negative, coil: {fed by: up, returns to: battery negative}}
  lower: {form: mini changeover, at: tray, fed by: main, returns to: battery negative, coil: {fed by: down, returns to: battery negative}}
loads:
  lift: {power: 120 W, rated at: 12 V, behaves: motor, at: tray, fed by: raise, returns to: lower}
situations:
  up: {on: [lift]}
  down: {reversed: [lift]}
  down by hand: {closed: [down]}
  both: {on: [lift], closed: [down]}
  neither: {}
`)
	d := c.Design
	lift := c.PartOf(d.Loads[0]).Branches[0]
	for _, want := range []struct {
		situation         string
		amps              float64
		makeA, restA      float64 // of the contacts of the raising relay: 87-30, 30-87a
		otherMake, otherR float64 // of the lowering one
	}{
		{"up", 10, 10, 0, 0, 10},
		{"down", -10, 0, 10, 10, 0},
		{"down by hand", -10, 0, 10, 10, 0},
		{"both", 0, 0, 0, 0, 0},
		{"neither", 0, 0, 0, 0, 0},
	} {
		var s *solve.Solution
		for _, sit := range d.Situations {
			if sit.Name == want.situation {
				s = solve.Solve(c, sit, solve.Options{})
			}
		}
		converged(t, s)
		near(t, want.situation+": motor", s.Amps(lift), want.amps, 1e-6)
		if on := s.LoadOn[lift.Index]; on != (want.amps != 0) {
			t.Errorf("%s: on %t", want.situation, on)
		}
		near(t, want.situation+": volts by magnitude", s.LoadV(lift), math.Abs(s.Volts(lift)), 1e-12)
		for i, pair := range [][2]float64{{want.makeA, want.restA}, {want.otherMake, want.otherR}} {
			p := c.PartOf(d.Relays[i])
			for k, amps := range pair {
				near(t, want.situation+": "+p.Branches[k].Name, s.Amps(p.Branches[k]), amps, 1e-6)
				near(t, want.situation+": drop of "+p.Branches[k].Name, s.Amps(p.Branches[k])*p.Branches[k].Ohm, 0.005*amps, 1e-6)
			}
		}
	}
}
