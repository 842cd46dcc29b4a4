package solve

import (
	"math"

	"fusewright/harness/network/circuit"
)

// LinkA is what a branch that leads to a further battery's post takes from the first
// battery, in amperes, negative = gives to it. What further batteries exchange over a part
// of the link that they share is left out: the lesser of the branch's current and that at
// the first battery's post, 0 where the two run against each other.
func (s *Solution) LinkA(c *circuit.Circuit, b *circuit.Branch) float64 {
	a, first := s.BranchA[b.Index], 0.0
	if b.A == c.Positive() {
		return a
	}
	for i, on := range c.Feeding(b.A) {
		if on && c.Branches[i].A == c.Positive() {
			first += s.BranchA[i]
		}
	}
	if a*first <= 0 {
		return 0
	}
	return math.Copysign(min(math.Abs(a), math.Abs(first)), a)
}
