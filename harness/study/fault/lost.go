package fault

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
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
	Branch *circuit.Branch
	// Affected holds the parts of those situations in which the loss can do more
	// than kill, in branch order; each part with its gravest effect. All has the
	// dead too: on a chain of grounds they are as many as the chain is long squared.
	Affected []Affected
	Unsolved []string // situations without a result, with the reason

	circuit  *circuit.Circuit
	outcomes []outcome // by situation
}

// Shared lists the parts joined by what is left of the return.
func (l *Lost) Shared() []*circuit.Part { return stranded(l.circuit, l.Branch) }

// All lists every part affected, in branch order; each with its gravest effect.
func (l *Lost) All() []Affected {
	var all []Affected
	shared := l.Shared()
	for _, o := range l.outcomes {
		for _, a := range o.affected {
			all = add(all, a)
		}
		if o.dead != nil {
			for _, a := range allDead(shared, o.dead) {
				all = add(all, a)
			}
		}
	}
	return all
}

// lostReturns studies the returns that more than one part shares.
func (s *Study) lostReturns(partly bool) {
	c := s.Circuit
	hanging := newStrandings(c)
	for _, b := range c.Branches {
		if b.Returns() && hanging.shared(b) {
			s.Lost = append(s.Lost, &Lost{Branch: b, circuit: c})
		}
	}
	if len(s.Lost) == 0 {
		return
	}
	for _, in := range s.solveLost(hanging, partly) {
		for i, l := range s.Lost {
			l.outcomes = append(l.outcomes, in[i])
			if in[i].unsolved != "" {
				l.Unsolved = append(l.Unsolved, in[i].unsolved)
			}
			for _, a := range in[i].affected {
				l.Affected = add(l.Affected, a)
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
func add(list []Affected, a Affected) []Affected {
	at, found := slices.BinarySearchFunc(list, a.Branch.Index,
		func(was Affected, index int) int { return was.Branch.Index - index })
	if !found {
		return slices.Insert(list, at, a)
	}
	was := &list[at]
	if g, w := gravity[a.Effect], gravity[was.Effect]; g > w ||
		g == w && math.Abs(known(a.AfterV)) > math.Abs(known(was.AfterV))+1e-6 {
		*was = a
	}
	return list
}
