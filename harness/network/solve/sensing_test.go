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
