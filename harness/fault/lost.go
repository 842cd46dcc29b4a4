package fault

import (
	"math"
	"slices"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
)

// Effect is what the loss of a return does to a part that it leaves joined to
// others.
type Effect string

// The effects.
const (
	Dead      Effect = "dead"      // it works no more
	Backward  Effect = "reversed"  // it gets voltage the wrong way round
	Excessive Effect = "excess"    // it gets more voltage than it bears, or than the source has in ordinary use
	Woken     Effect = "woken"     // it was off and gets current through another part
	Weakened  Effect = "weakened"  // it works on less voltage
	Pulled    Effect = "pulled in" // a relay that was at rest pulls in
)

// Affected is one part under the loss of a return, in its worst situation.
type Affected struct {
	Branch    *circuit.Branch // of the load or coil
	Effect    Effect
	Situation *design.Situation
	BeforeV   float64
	AfterV    float64 // NaN = floating
	AfterA    float64
}

// Lost is a return wire or a ground's frame path that is lost. A return that
// only one part uses leaves that part dead and nothing else; it is not listed.
type Lost struct {
	Branch   *circuit.Branch
	Shared   []*circuit.Part // parts joined by what is left of the return
	Affected []Affected      // in branch order; each part with its gravest effect
	Unsolved []string        // situations without a result, with the reason
}

// lostReturns studies the returns that more than one part shares.
func (s *Study) lostReturns(partly bool) {
	c := s.Circuit
	for _, b := range c.Branches {
		if !b.Returns() {
			continue
		}
		if parts := stranded(c, b); len(parts) > 1 {
			s.Lost = append(s.Lost, &Lost{Branch: b, Shared: parts})
		}
	}
	if len(s.Lost) == 0 {
		return
	}
	for _, in := range s.solveLost(partly) {
		for i, l := range s.Lost {
			if in[i].unsolved != "" {
				l.Unsolved = append(l.Unsolved, in[i].unsolved)
			}
			for _, a := range in[i].affected {
				l.add(a)
			}
		}
	}
}

// stranded lists the parts whose loads or coils a lost return leaves joined to
// each other and no longer to battery negative; nil when another way leads back.
func stranded(c *circuit.Circuit, lost *circuit.Branch) []*circuit.Part {
	seen := map[*circuit.Node]bool{lost.A: true}
	with := map[*circuit.Part]bool{}
	var parts []*circuit.Part
	for queue := []*circuit.Node{lost.A}; len(queue) > 0; queue = queue[1:] {
		n := queue[0]
		if n == c.Negative() {
			return nil
		}
		for _, b := range n.Branches {
			switch {
			case b == lost:
			case b.Conductor():
				for _, m := range []*circuit.Node{b.A, b.B} {
					if !seen[m] {
						seen[m] = true
						queue = append(queue, m)
					}
				}
			case b.Part != nil && !with[b.Part]:
				with[b.Part] = true
				parts = append(parts, b.Part)
			}
		}
	}
	return parts
}

// gravity orders effects, the gravest first.
var gravity = map[Effect]int{Excessive: 6, Pulled: 5, Backward: 4, Woken: 3, Dead: 2, Weakened: 1}

// add keeps one entry a part: the gravest effect, of equal ones the one with
// the most voltage.
func (l *Lost) add(a Affected) {
	at, found := slices.BinarySearchFunc(l.Affected, a.Branch.Index,
		func(was Affected, index int) int { return was.Branch.Index - index })
	if !found {
		l.Affected = slices.Insert(l.Affected, at, a)
		return
	}
	was := &l.Affected[at]
	if g, w := gravity[a.Effect], gravity[was.Effect]; g > w ||
		g == w && math.Abs(known(a.AfterV)) > math.Abs(known(was.AfterV))+1e-6 {
		*was = a
	}
}
