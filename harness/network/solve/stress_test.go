package solve_test

import (
	"slices"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// Loads from half to fifty times what the network is made for, batteries full
// and flat, corners of contacts: each ends as an operating point, a collapse or
// chattering relays, never as "did not converge"; and what the network carries
// with more load it carries with less, the same contacts being closed (a sag can
// keep a relay from pulling in, and then there is less to carry).
func TestOverloadAlwaysEndsInAnAnswer(t *testing.T) {
	ends := map[solve.Status]int{}
	for seed := range uint64(150) {
		c, sit := solvetest.Random(50000 + seed)
		plan := solve.Prepare(c)
		var failed *solve.Solution
		for _, factor := range []float64{0.5, 1, 2, 4, 8, 16, 50} {
			s := plan.Network(sit, solve.Options{
				LoadFactor: func(*circuit.Branch) float64 { return factor },
				Discharged: float64(seed%5) / 5, ContactFactor: float64(1 + seed%3),
			}).Solution()
			ends[s.Status]++
			switch s.Status {
			case solve.NotConverged:
				t.Errorf("seed %d × %g: %s", seed, factor, s.Why)
			case solve.Converged:
				if failed != nil && slices.Equal(failed.Closed, s.Closed) {
					t.Errorf("seed %d carries × %g though not less", seed, factor)
				}
			}
			if s.Status != solve.Converged && s.Why == "" {
				t.Errorf("seed %d × %g: %s without a reason", seed, factor, s.Status)
			}
			if s.Iterations > 200 {
				t.Errorf("seed %d × %g: %s after %d steps", seed, factor, s.Status, s.Iterations)
			}
			if s.Status != solve.Converged {
				failed = s
			}
		}
	}
	if ends[solve.Collapsed] == 0 || ends[solve.Converged] == 0 {
		t.Errorf("ends %v do not cover the cases", ends)
	}
	t.Logf("%v", ends)
}
