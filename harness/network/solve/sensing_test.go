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

// A load beyond the house battery that charging cannot give: closed, the relay is pulled
// below 12.8 V and opens; open, the first battery stands at 14.4 V and it would close. It
// waits, and what is solved is with it open. By hand, closed: 0.11 Ω asks for some 110 A,
// of which 20 A are charged, and the batteries at rest, 12.8 V, give the rest at less.
func TestSensingRelayThatHunts(t *testing.T) {
	for _, c := range []struct {
		name    string
		loadOhm float64
		hunts   bool
	}{{"a lamp", 12, false}, {"a windlass", 0.11, true}} {
		t.Run(c.name, func(t *testing.T) {
			b := solvetest.New()
			plus, house := b.Node("battery +"), b.Node("house +")
			b.Battery(plus, 0.005)
			b.Charger(plus, 14.4, 20)
			b.Bank("house", "AGM", 100, house, b.Ground())
			b.Resistor("load", house, b.Ground(), c.loadOhm)
			coil, contact := b.Relay("K1", plus, b.Ground(), plus, house, false)
			form := coil.Part.Source.(*design.Relay).Form
			form.Senses, form.PullInV, form.DropOutV, coil.Ohm = true, 13.3, 12.8, 12000
			s := solve.Solve(b.C, solvetest.Situation(3000), solve.Options{})
			converged(t, s)
			if (s.Hunts != nil) != c.hunts || s.Closed[contact.Index] == c.hunts {
				t.Errorf("hunts %t, closed %t", s.Hunts != nil, s.Closed[contact.Index])
			}
			if c.hunts && s.NodeV[plus.Index] < 13.3 {
				t.Errorf("open, the first battery has %.2f V", s.NodeV[plus.Index])
			}
		})
	}
}
