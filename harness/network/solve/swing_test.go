package solve_test

import (
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// Several chargers on one battery that a charging system at its limit holds: a little more taken flips its voltage by a
// volt, and what the chargers take swings. It settles all the same: currents and power balance, and a reference program agrees
// with these within 0.1 µV.
func TestChargersThatSwingSettle(t *testing.T) {
	for _, seed := range []uint64{701315, 703281, 703295, 703385, 704055, 705257} {
		c, sit := solvetest.RandomChargers(seed)
		converged(t, solve.Solve(c, sit, solve.Options{}))
	}
}
