package solve_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// A sensing relay closes at 13.3 V of its feed and no earlier: closed, the house battery
// (resting at 12.8 V) takes charge; open, it stands by itself.
func TestSensingRelayByItsFeed(t *testing.T) {
	for _, c := range []struct {
		name   string
		postsV float64
		closed bool
	}{{"rest", 12.7, false}, {"just below", 13.29, false}, {"just above", 13.31, true}, {"charging", 14.4, true}} {
		t.Run(c.name, func(t *testing.T) {
			b := solvetest.New()
			plus, house := b.Node("battery +"), b.Node("house +")
			b.Battery(plus, 0.001)
			bank := b.Bank("house", "AGM", 100, house, b.Ground())
			coil, contact := b.Relay("K1", plus, b.Ground(), plus, house, false)
			form := coil.Part.Source.(*design.Relay).Form
			form.Senses, form.PullInV, form.DropOutV, coil.Ohm = true, 13.3, 12.8, 12000
			s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: c.postsV})
			converged(t, s)
			if s.Closed[contact.Index] != c.closed {
				t.Errorf("closed %t at %g V", s.Closed[contact.Index], c.postsV)
			}
			if charged := s.Given(bank) < 0; charged != c.closed {
				t.Errorf("the house battery gives %g A", s.Given(bank))
			}
		})
	}
}

// A load that pulls the posts below the opening voltage once the relay has closed, and not
// before, makes it open and close in turn: taken as closed, and said.
func TestSensingRelayCycles(t *testing.T) {
	for _, c := range []struct {
		name   string
		ohm    float64 // of the load behind the link
		cycles bool
	}{
		// 14.4 V behind 50 mΩ. Alone the posts have 14.4 V; closed with a load of R they have
		// 14.4 R / (R + 0.05): 12.8 V at R = 0.4 Ω.
		{"holds 12.8 V", 0.41, false}, {"pulled below", 0.39, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := solvetest.New()
			plus, house := b.Node("battery +"), b.Node("house +")
			b.Battery(plus, 0.05)
			coil, contact := b.Relay("K1", plus, b.Ground(), plus, house, false)
			form := coil.Part.Source.(*design.Relay).Form
			form.Senses, form.PullInV, form.DropOutV, coil.Ohm = true, 13.3, 12.8, 12000
			b.Resistor("load", house, b.Ground(), c.ohm)
			s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: 14.4})
			converged(t, s)
			if !s.Closed[contact.Index] || (s.Cycles == coil) != c.cycles {
				t.Errorf("closed %t, cycles %v", s.Closed[contact.Index], s.Cycles)
			}
		})
	}
}
