package fault

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Strung is a fault in a string of loads in series that leaves the others more than their share: one load
// shorted, or a wire between two chafed to the frame, which leaves those before it the whole voltage.
type Strung struct {
	Shorted *circuit.Branch // the load; nil = Chafed
	Chafed  *circuit.Wire
	// Suffers is the load that gets most over what it is rated for, in the situation in which it is
	// most; nil = no situation has the string on.
	Suffers         *circuit.Branch
	BeforeV, AfterV float64
	BearsV          float64 // of its maximum voltage, else one and a half times what it is rated for
	Situation       *design.Situation
	Unsolved        []string // situations without a result, with the reason
}

// Over tells whether the load that suffers most gets more than it bears.
func (x *Strung) Over() bool { return x.Suffers != nil && x.AfterV > x.BearsV }

// strings makes the faults of every string in turn, in every situation.
func (s *Study) strings() {
	for _, b := range s.Circuit.Branches {
		for i, l := range b.String {
			if b.String[0] != b {
				break
			}
			s.Strung = append(s.Strung, &Strung{Shorted: l})
			if i+1 == len(b.String) {
				break
			}
			for _, w := range s.Circuit.Wires {
				if w.Branch.BehindLoad() && w.From.Part == l.Part {
					s.Strung = append(s.Strung, &Strung{Chafed: w})
				}
			}
		}
	}
	if len(s.Strung) == 0 {
		return
	}
	for _, in := range s.Circuit.Design.Situations {
		n := s.plan.Network(in, solve.Options{AcceptFolded: true})
		before := n.Solution()
		for _, x := range s.Strung {
			x.fail(s.Circuit, n, before)
		}
	}
}

// fail makes the fault in one situation.
func (x *Strung) fail(c *circuit.Circuit, n *solve.Network, before *solve.Solution) {
	at, change := x.Shorted, solve.Change{}
	if x.Chafed != nil {
		at = loadOf(x.Chafed)
		change = solve.Short(at.B, c.Negative(), circuit.LeastOhm)
	} else {
		change = solve.Short(at.A, at.B, circuit.LeastOhm)
	}
	if before.Status == solve.Converged && !(math.Abs(before.Volts(at)) > idleV) {
		return // it is off
	}
	after := before
	if before.Status == solve.Converged {
		after = n.Resolve(false, change)
	}
	if after.Status != solve.Converged {
		x.Unsolved = append(x.Unsolved, fmt.Sprintf("%s (%s)", before.Situation.Name, after.Status))
		return
	}
	for _, b := range at.String {
		v, was := known(after.Volts(b)), known(before.Volts(b))
		bears := accessory(b).MaxV.Or(ratedMostShare * b.Load.RatedV)
		if b == x.Shorted || x.Suffers != nil && !(v/bears > x.AfterV/x.BearsV) {
			continue
		}
		x.Suffers, x.BeforeV, x.AfterV, x.BearsV, x.Situation = b, was, v, bears, before.Situation
	}
}

// loadOf is the load before a wire between two in series.
func loadOf(w *circuit.Wire) *circuit.Branch {
	for _, b := range w.From.Part.Branches {
		if len(b.String) > 0 {
			return b
		}
	}
	return nil
}
