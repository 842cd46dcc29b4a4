// Package protection compares every overcurrent device of a circuit with what
// hangs on it: each wire that it has to protect, at every current from its
// rating to the bolted-fault current at the wire's near end; each load, its
// running current at the ambient and its start; and each device above it, for
// which of the two opens first. It computes and judges nothing: package rules
// makes findings of it. The curves are those of package fusing and the damage
// curves those of package conductor; prospective currents come from package
// fault.
package protection

import (
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"fusewright/harness/design"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/fault"
)

// Study is every comparison of a circuit. Rows are in the order of the fuses'
// branches, then of the wires', the loads' or the upper fuses'.
type Study struct {
	Circuit *circuit.Circuit
	Fuses   []*Fuse
}

// Fuse is one device with all that is compared with it.
type Fuse struct {
	Branch  *circuit.Branch
	Device  fusing.Device
	Assumed bool // the type is not known: a factory fuse taken as a blade fuse
	// RunningA is its greatest current over the situations, in Situation.
	RunningA  float64
	Situation *design.Situation // nil when it never carries current
	Running   fusing.Carrying
	// FaultA is the greatest current of a short just behind it.
	FaultA float64
	Wires  []Wire
	Starts []Start
	Above  []Pair
}

// Wire is a device against a wire that it protects.
type Wire struct {
	Wire *circuit.Wire
	fusing.Protection
	// Parallel tells that other devices feed the wire as well, so that it may
	// carry more than this one lets through.
	Parallel bool
	// Missing is what the damage curve rests on that is not published.
	Missing []string
}

// Start is a device against the start of a load.
type Start struct {
	Load *circuit.Branch
	fusing.Carrying
}

// Worst is the wire with the least margin, the first of equal ones; nil when
// the device protects none.
func (f *Fuse) Worst() *Wire {
	var worst *Wire
	for i := range f.Wires {
		if w := &f.Wires[i]; worst == nil || before(w, worst) {
			worst = w
		}
	}
	return worst
}

// before tells whether a wire has less margin than another: over all currents,
// then over those alone for which the opening is published.
func before(a, b *Wire) bool {
	if a.Ratio != b.Ratio {
		return a.Ratio < b.Ratio
	}
	return a.KnownRatio < b.KnownRatio
}

// Find is the row of a fuse's branch; nil when it is not a fuse.
func (s *Study) Find(b *circuit.Branch) *Fuse {
	for _, f := range s.Fuses {
		if f.Branch == b {
			return f
		}
	}
	return nil
}

// Compute compares every device. Solutions give the running currents; those
// that did not converge are left out.
func Compute(c *circuit.Circuit, sols []*solve.Solution, faults *fault.Study) *Study {
	return compute(c, faults, func(f *Fuse, g *gathered) {
		f.judge(faults, g)
		f.compare(sols, faults, g)
	})
}

// ForRules is the part of a study that rules judge: currents behind each fuse,
// wires, and the pairs that a short inverts.
func ForRules(c *circuit.Circuit, faults *fault.Study) *Study {
	return compute(c, faults, func(f *Fuse, g *gathered) { f.judge(faults, g) })
}

func compute(c *circuit.Circuit, faults *fault.Study, study func(*Fuse, *gathered)) *Study {
	s := &Study{Circuit: c}
	g := gather(c, faults)
	for _, b := range c.Branches {
		if b.Kind == circuit.FuseBranch && b.Fuse != nil && b.Feeds() {
			s.Fuses = append(s.Fuses, &Fuse{Branch: b, FaultA: g.behind[b.Index]})
		}
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(s.Fuses)) {
		wait.Go(func() {
			for k := int(next.Add(1)) - 1; k < len(s.Fuses); k = int(next.Add(1)) - 1 {
				study(s.Fuses[k], g)
			}
		})
	}
	wait.Wait()
	return s
}

// judge compares the fuse with its wires, and with those above it at every short.
func (f *Fuse) judge(faults *fault.Study, g *gathered) {
	at := f.Branch.Index
	f.Device, f.Assumed = faults.Device(f.Branch)
	f.Wires = make([]Wire, 0, len(g.wires[at]))
	for _, w := range g.wires[at] {
		f.Wires = append(f.Wires, f.wire(w, faults))
	}
	for _, up := range g.guards.Upstream(f.Branch) {
		if g.linked != nil && slices.Contains(g.linked.Fuses[up.Index], f.Branch) {
			continue // the two ends of a link: each opens for its own battery
		}
		if g.rings.In(up) && g.rings.In(f.Branch) {
			continue // of a ring each opens for its own end
		}
		f.Above = append(f.Above, f.inverted(up, faults))
	}
}

// compare adds what the fuse carries, what starts behind it, and how far it is
// selective.
func (f *Fuse) compare(sols []*solve.Solution, faults *fault.Study, g *gathered) {
	f.run(sols)
	for _, l := range g.loads[f.Branch.Index] {
		in := l.Load.Load.Inrush
		f.Starts = append(f.Starts, Start{Load: l, Carrying: fusing.Carries(f.Device, l.Load.RatedA(), in)})
	}
	for i := range f.Above {
		f.compareAbove(&f.Above[i], faults)
	}
}

// run finds the greatest running current.
func (f *Fuse) run(sols []*solve.Solution) {
	for _, s := range sols {
		if a := math.Abs(s.Amps(f.Branch)); s.Status == solve.Converged && a > f.RunningA && !math.IsInf(a, 0) {
			f.RunningA, f.Situation = a, s.Situation
		}
	}
	f.Running = fusing.Carries(f.Device, f.RunningA, noInrush)
}
