package fault

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Abreast is one of several wires side by side that is lost, as by a loose lug: what the
// others carry then, in the situation in which it is most. The fuse sees no difference.
type Abreast struct {
	Lost, Left      *circuit.Wire // Left carries the most of those that stay
	BeforeA, AfterA float64       // of Left
	Situation       *design.Situation
	Unsolved        []string // situations without a result, with the reason
}

// abreast loses, of each set of wires side by side, the first: they are equal.
func (s *Study) abreast() {
	for _, w := range s.Circuit.Wires {
		if all := w.Parallel(); len(all) > 1 && all[0] == w {
			s.Abreast = append(s.Abreast, &Abreast{Lost: w})
		}
	}
	if len(s.Abreast) == 0 {
		return
	}
	for _, in := range s.Circuit.Design.Situations {
		n := s.plan.Network(in, solve.Options{AcceptFolded: true})
		before := n.Solution()
		for _, a := range s.Abreast {
			a.lose(n, before)
		}
	}
}

func (a *Abreast) lose(n *solve.Network, before *solve.Solution) {
	after := before
	if before.Status == solve.Converged {
		after = n.Resolve(false, solve.OpenBranch(a.Lost.Branch))
	}
	if after.Status != solve.Converged {
		a.Unsolved = append(a.Unsolved, fmt.Sprintf("%s (%s)", before.Situation.Name, after.Status))
		return
	}
	for _, w := range a.Lost.Parallel()[1:] {
		if amps := math.Abs(after.Amps(w.Branch)); amps > a.AfterA {
			a.Left, a.AfterA, a.BeforeA = w, amps, math.Abs(before.Amps(w.Branch))
			a.Situation = before.Situation
		}
	}
}
