package solve_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// Two batteries at the same resting voltage, linked by a diode and a relay: one of them stands at the knee of its own law, where
// it neither gives nor takes. By hand a coil of 90 Ω on the first takes 12.7 / (90 + 0.013) A and a sensing one of 12 kΩ on the
// second 12.7 / 12000 A; nothing passes the link but the leak of the diode.
func TestBatteriesAtRest(t *testing.T) {
	for _, c := range []struct {
		name           string
		first, further float64 // amperes
		coilOhm        float64
		senses         bool // the further battery, by its own feed
	}{
		{"a coil on the first battery", 12.7 / (90 + 0.013), 0, 90, false},
		{"a sensing coil on the further one", 0, 12.7 / 12000, 12000, true},
	} {
		for _, schottky := range []bool{false, true} {
			b := solvetest.New()
			plus, end, post := b.Node("battery +"), b.Node("end"), b.Node("house +")
			b.Battery(plus, 0.013)
			b.Diode("D", plus, end, schottky, false)
			b.Wire("W", end, post, 2, 16)
			bank := b.Bank("house", "flooded", 60, post, b.Ground())
			at := plus
			if c.senses {
				at = post
			}
			coil, contact := b.Relay("K", at, b.Ground(), post, plus, false)
			coil.Ohm = c.coilOhm
			form := coil.Part.Source.(*design.Relay).Form
			form.Senses, form.PullInV, form.DropOutV = true, 13.3, 12.8
			s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{})
			converged(t, s)
			if s.Closed[contact.Index] {
				t.Errorf("%s: closed", c.name)
			}
			near(t, c.name+", first", s.BatteryA, c.first, 1e-5)
			near(t, c.name+", further", s.Given(bank), c.further, 1e-5)
		}
	}
}

// Where nothing but the leak of a diode flows, one that is reversed among them, the power that they carry balances as far as currents do.
// 12.42994 V against 12.41016 V over 100 V / 5 µA: 0.99 nA.
func TestLeakBetweenBatteries(t *testing.T) {
	b := solvetest.New()
	plus, end, post := b.Node("battery +"), b.Node("end"), b.Node("house +")
	b.Battery(plus, 0.020674269848070595)
	b.C.Design.Battery.CapacityAh = solvetest.Given(95.038391747780878)
	b.Diode("D", plus, end, false, true)
	b.Wire("W", end, post, 1.4891891389916589, 16)
	b.Bank("house", "LiFePO4", 104.12864499181414, post, b.Ground())
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{Discharged: 0.18757401157477482, BanksDischarged: 0.84873046149096243})
	converged(t, s)
	near(t, "first", s.BatteryA, 0.99e-9, 1e-9)
}
