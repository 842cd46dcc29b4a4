package fault

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// mostRingFuses is how many fuses in rings are followed from one opening to the next, mostInRing how many in one of
// them: every set that may be open is a network to solve. No vehicle has as many.
const mostRingFuses, mostInRing = 64, 6

// Leg is a ring with one of its fuses out: what the others carry then and the loads lose, each in the situation in
// which it is most. Nobody notices that a leg is open.
type Leg struct {
	Out   *circuit.Branch
	Fuses []LegFuse // of the ring, those that stay
	Loads []LegLoad
}

// LegFuse is the current of a fuse.
type LegFuse struct {
	Fuse      *circuit.Branch
	Amps      float64
	Situation *design.Situation
}

// LegLoad is what a load loses between its battery's posts and its terminals, before and with the leg open.
type LegLoad struct {
	Load           *circuit.Branch
	BeforeV, LostV float64
	Situation      *design.Situation
}

// legs takes out each fuse of a ring in turn.
func (s *Study) legs() {
	fuses := s.rings.Fuses(s.Circuit)
	if len(fuses) == 0 || s.Unfollowed {
		return
	}
	for _, b := range fuses {
		s.Legs = append(s.Legs, &Leg{Out: b})
	}
	for _, in := range s.Circuit.Design.Situations {
		n := s.plan.Network(in, solve.Options{AcceptFolded: true})
		before := n.Solution()
		if before.Status != solve.Converged {
			continue
		}
		for _, leg := range s.Legs {
			if after := n.Resolve(false, solve.OpenBranch(leg.Out)); after.Status == solve.Converged {
				leg.take(fuses, loads(s.Circuit), before, after)
			}
		}
	}
}

func (l *Leg) take(fuses, loads []*circuit.Branch, before, after *solve.Solution) {
	if l.Fuses == nil {
		l.Fuses, l.Loads = make([]LegFuse, len(fuses)), make([]LegLoad, len(loads))
	}
	for i, b := range fuses {
		if a := math.Abs(after.Amps(b)); a > l.Fuses[i].Amps {
			l.Fuses[i] = LegFuse{b, a, after.Situation}
		}
	}
	for i, b := range loads {
		if v := after.LostV(b); before.LoadOn[b.Index] && v > l.Loads[i].LostV {
			l.Loads[i] = LegLoad{b, before.LostV(b), v, after.Situation}
		}
	}
}
