package fault

import (
	"cmp"
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// outcome is what one lost return does in one situation.
type outcome struct {
	affected []Affected
	dead     *solve.Solution // before a loss that leaves everything beyond dead; see allDead
	unsolved string          // the situation and why it has no result; "" = it has one
}

// solveLost solves each situation once and again with each return open: by
// situation, then by return.
func (s *Study) solveLost(hanging *strandings, partly bool) [][]outcome {
	c := s.Circuit
	grid := make([][]outcome, len(c.Design.Situations))
	next := make(chan int)
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(grid)) {
		wait.Go(func() {
			for k := range next {
				b := newBase(s.plan.Network(c.Design.Situations[k], solve.Options{AcceptFolded: true}), partly)
				b.strandings, b.moods = hanging, hanging.moods(b.before)
				for _, l := range s.Lost {
					grid[k] = append(grid[k], l.in(b))
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

// base is a situation without a fault, ready to lose one return after another.
type base struct {
	network *solve.Network
	before  *solve.Solution
	local   *solve.Local // nil = every loss is solved as a whole
	limitV  float64      // what parts bear that say nothing of it
	drawing []sensitive  // ascending by leastV

	strandings *strandings
	moods      []mood
}

// sensitive is a load or coil with the least change of its voltage that can
// have an effect.
type sensitive struct {
	branch *circuit.Branch
	leastV float64
}

// newBase makes a situation ready; partly lets losses be solved in the part of
// the network that they change.
func newBase(n *solve.Network, partly bool) *base {
	b := &base{network: n, before: n.Solution()}
	if b.before.Status != solve.Converged {
		return b
	}
	b.limitV = ordinaryV(b.before) + sourceV
	for _, br := range b.before.Circuit.Branches {
		if drawsVoltage(br) {
			b.drawing = append(b.drawing, sensitive{br, leastChangeV(b.before.Circuit, br, whole{b.before}, b.limitV)})
		}
	}
	slices.SortStableFunc(b.drawing, func(x, y sensitive) int { return cmp.Compare(x.leastV, y.leastV) })
	if partly {
		b.local = n.Local()
	}
	return b
}

// in is what the loss does in a situation. Most losses are solved in their own
// part of the network alone; those that reach further, and those without an
// operating point there, in the whole.
func (l *Lost) in(b *base) outcome {
	before := b.before
	if before.Status != solve.Converged {
		return outcome{unsolved: fmt.Sprintf("%s (%s)", before.Situation.Name, before.Status)}
	}
	if !b.mixed(l) {
		return outcome{dead: before}
	}
	if b.local != nil {
		if p := b.local.Open(l.Branch); p != nil {
			return outcome{affected: b.comparePart(p)}
		}
	}
	after := b.network.Resolve(false, solve.OpenBranch(l.Branch))
	if after.Status != solve.Converged {
		return outcome{unsolved: fmt.Sprintf("%s (%s)", before.Situation.Name, after.Status)}
	}
	var out []Affected
	for _, d := range b.drawing {
		out = b.compare(out, d.branch, whole{after})
	}
	return outcome{affected: out}
}

// comparePart holds the parts within a part of the network against before, and
// of those outside the ones that the change at its border can have an effect on.
func (b *base) comparePart(p *solve.Partial) []Affected {
	var out []Affected
	for _, br := range p.Branches() {
		if drawsVoltage(br) {
			out = b.compare(out, br, p)
		}
	}
	for _, d := range b.drawing {
		if d.leastV > 2*p.ShiftV() {
			break
		}
		if !p.Inside(d.branch) {
			out = b.compare(out, d.branch, p)
		}
	}
	return out
}

// compare adds what happened to one load or coil.
func (b *base) compare(out []Affected, br *circuit.Branch, after state) []Affected {
	before := whole{b.before}
	e := effect(b.before.Circuit, br, before, after, b.limitV)
	if e == "" {
		return out
	}
	return append(out, Affected{Branch: br, Effect: e, Situation: b.before.Situation,
		BeforeV: known(before.Volts(br)), AfterV: clean(after.Volts(br)), AfterA: clean(after.Amps(br))})
}

// clean takes the rounding of a solution that is nothing for nothing.
func clean(x float64) float64 {
	if math.Abs(x) < 1e-9 {
		return 0
	}
	return x
}

// allDead is the loss where every part joined is live, or none is.
func allDead(shared []*circuit.Part, base *solve.Solution) []Affected {
	var out []Affected
	for _, part := range shared {
		for _, b := range part.Branches {
			if drawsVoltage(b) && known(base.Volts(b)) > idleV {
				out = append(out, Affected{Branch: b, Effect: Dead, Situation: base.Situation,
					BeforeV: known(base.Volts(b))})
			}
		}
	}
	return out
}
