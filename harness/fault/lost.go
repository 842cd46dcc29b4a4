package fault

import (
	"fmt"
	"math"
	"runtime"
	"sync"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/solve"
)

// Effect is what the loss of a return does to a part that it leaves joined to
// others.
type Effect string

// The effects.
const (
	Dead      Effect = "dead"      // it works no more
	Backward  Effect = "reversed"  // it gets voltage the wrong way round
	Excessive Effect = "excess"    // it gets more voltage than it bears or than the source has
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

// Thresholds of effects; our choices.
const (
	reversedV  = 1.0  // from where a part counts as reversed
	wokenShare = 0.10 // of a load's rated voltage, from where an idle one counts as woken
	idleV      = 0.3  // below which it was idle
	weakShare  = 0.05 // of its voltage lost, from where a load counts as weakened
	deadShare  = 0.30 // of its rated voltage left, below which it counts as dead
	sourceV    = 0.05 // above the highest voltage of the source
)

// lostReturns studies the returns that more than one part shares.
func (s *Study) lostReturns() {
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
	for _, in := range s.solveLost() {
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

// outcome is what one lost return does in one situation.
type outcome struct {
	affected []Affected
	unsolved string // the situation and why it has no result; "" = it has one
}

// solveLost solves each situation once and again with each return open: by
// situation, then by return.
func (s *Study) solveLost() [][]outcome {
	c := s.Circuit
	plan := solve.Prepare(c)
	grid := make([][]outcome, len(c.Design.Situations))
	next := make(chan int)
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(grid)) {
		wait.Go(func() {
			for k := range next {
				n := plan.Network(c.Design.Situations[k], solve.Options{AcceptFolded: true})
				base := n.Solution()
				for _, l := range s.Lost {
					grid[k] = append(grid[k], l.in(n, base))
				}
			}
		})
	}
	for k := range grid {
		next <- k
	}
	close(next)
	wait.Wait()
	return grid
}

// in is what the loss does in the situation of a network.
func (l *Lost) in(n *solve.Network, base *solve.Solution) outcome {
	if base.Status != solve.Converged {
		return outcome{unsolved: fmt.Sprintf("%s (%s)", base.Situation.Name, base.Status)}
	}
	if !l.mixed(base) {
		return outcome{affected: l.allDead(base)}
	}
	after := n.Resolve(false, solve.OpenBranch(l.Branch))
	if after.Status != solve.Converged {
		return outcome{unsolved: fmt.Sprintf("%s (%s)", base.Situation.Name, after.Status)}
	}
	return outcome{affected: compare(base, after)}
}

// mixed tells whether the loss can do more than kill: some of the parts joined
// are live on their hot side and others are not, so that current has a way from
// one to the other; or a relay lets go, whose contacts then move.
func (l *Lost) mixed(base *solve.Solution) bool {
	live, idle := false, false
	for _, part := range l.Shared {
		for _, b := range part.Branches {
			if b.Kind != circuit.LoadBranch && b.Kind != circuit.ResistorBranch {
				continue
			}
			v := base.NodeV[b.A.Index]
			switch {
			case math.IsNaN(v): // its hot side hangs in the air
			case v > idleV:
				live = true
				if b.Load == nil {
					return true
				}
			default:
				idle = true
			}
		}
	}
	return live && idle
}

// allDead is the loss where every part joined is live, or none is.
func (l *Lost) allDead(base *solve.Solution) []Affected {
	var out []Affected
	for _, part := range l.Shared {
		for _, b := range part.Branches {
			if drawsVoltage(b) && known(base.Volts(b)) > idleV {
				out = append(out, Affected{Branch: b, Effect: Dead, Situation: base.Situation,
					BeforeV: known(base.Volts(b))})
			}
		}
	}
	return out
}

// compare holds a situation before against after.
func compare(before, after *solve.Solution) []Affected {
	limit := highest(before) + sourceV
	var out []Affected
	for _, b := range before.Circuit.Branches {
		if !drawsVoltage(b) {
			continue
		}
		if e := effect(b, before, after, limit); e != "" {
			out = append(out, Affected{Branch: b, Effect: e, Situation: before.Situation,
				BeforeV: known(before.Volts(b)), AfterV: after.Volts(b), AfterA: after.Amps(b)})
		}
	}
	return out
}

// drawsVoltage tells whether a branch is an accessory or a coil.
func drawsVoltage(b *circuit.Branch) bool {
	if b.Load != nil {
		return b.Load.Load != nil && !b.Load.Standby
	}
	return b.Part != nil && b.Part.Kind == circuit.Relay && b == b.Part.Coil()
}

// highest is the highest voltage in a solution.
func highest(s *solve.Solution) float64 {
	v := 0.0
	for _, x := range s.NodeV {
		if x > v {
			v = x
		}
	}
	return v
}

// known is a voltage, zero where it floats.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// effect names what happens to a part; "" = nothing worth saying.
func effect(b *circuit.Branch, before, after *solve.Solution, limitV float64) Effect {
	was, now := known(before.Volts(b)), known(after.Volts(b))
	rated := 12.0
	if d := before.Circuit.Design; d != nil {
		rated = d.SystemV.Or(12)
	}
	if b.Load != nil {
		rated = b.Load.RatedV
		limitV = accessory(b).MaxV.Or(limitV)
	}
	switch {
	case b.Load == nil && pulls(b, after) && !pulls(b, before):
		return Pulled
	case now > limitV && now > was+sourceV:
		return Excessive
	case math.Abs(was) < idleV && math.Abs(now) > wokenShare*rated:
		return Woken
	case now < -reversedV && now < was-reversedV:
		return Backward
	case math.Abs(was) < idleV || now > was*(1-weakShare):
		return ""
	case now < deadShare*rated:
		return Dead
	}
	return Weakened
}

// pulls tells whether some make contact of a coil is closed.
func pulls(coil *circuit.Branch, s *solve.Solution) bool {
	for _, contact := range s.Circuit.ContactsOf(coil) {
		if contact.Closer.Coil == coil && s.Closed[contact.Index] {
			return true
		}
	}
	return false
}

// gravity orders effects, the gravest first.
var gravity = map[Effect]int{Excessive: 6, Pulled: 5, Backward: 4, Woken: 3, Dead: 2, Weakened: 1}

// add keeps one entry a part: the gravest effect, of equal ones the one with
// the most voltage.
func (l *Lost) add(a Affected) {
	for i := range l.Affected {
		was := &l.Affected[i]
		if was.Branch != a.Branch {
			continue
		}
		if g, w := gravity[a.Effect], gravity[was.Effect]; g > w ||
			g == w && math.Abs(known(a.AfterV)) > math.Abs(known(was.AfterV))+1e-6 {
			*was = a
		}
		return
	}
	at := len(l.Affected)
	for at > 0 && l.Affected[at-1].Branch.Index > a.Branch.Index {
		at--
	}
	l.Affected = append(l.Affected, Affected{})
	copy(l.Affected[at+1:], l.Affected[at:])
	l.Affected[at] = a
}
