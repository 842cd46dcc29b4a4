// Package overload works out what the circuit itself can drive through a wire
// beyond its use, and for how long: a motor that is blocked, and all loads behind a
// trunk at once. It is the difference between an overload that has a source and
// one that is only thinkable. Shorts are package fault's. Nothing is judged here.
package overload

import (
	"cmp"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/fault"
)

// Overload is one current that the circuit can drive through a wire.
type Overload struct {
	Wire    *circuit.Wire
	Blocked *circuit.Branch // the motor that stands still; nil = all loads at once
	Amps    float64         // through the wire
	Bare    bool            // no fuse is on the way
	// Device is the fuse on the way that is the first to have opened for certain,
	// after OpensS at the latest; nil and +Inf when none need ever open.
	Device  *circuit.Branch
	OpensS  float64
	StandsS float64 // how long the wire stands it, from full service
	// Ruins tells that it passes the overload limit of the wire in the end, while none
	// need ever open.
	Ruins bool
}

// Hurts tells whether the wire is damaged before the device must have opened.
func (o *Overload) Hurts() bool { return o != nil && o.StandsS < o.OpensS }

// Compare puts the overload first that is worse for the wire: one that hurts it, of
// these one that ruins it, then the one that it stands for less; of those that it
// outlasts the one with the least margin.
func Compare(a, b *Overload) int {
	if c := cmp.Or(first(a.Hurts(), b.Hurts()), first(a.Ruins, b.Ruins)); c != 0 {
		return c
	}
	if a.Hurts() {
		return cmp.Compare(a.StandsS, b.StandsS)
	}
	return cmp.Compare(a.StandsS/a.OpensS, b.StandsS/b.OpensS)
}

func first(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// Study is the overloads of a circuit.
type Study struct {
	worst []*Overload   // by wire
	hurt  [][]*Overload // by wire: those that hurt it
}

// Hurting are the overloads that damage a wire before its fuse must have opened.
func (s *Study) Hurting(w *circuit.Wire) []*Overload { return s.hurt[w.Index] }

// Worst is the overload that is worst for a wire; nil when nothing can drive
// more through it than it carries in use.
func (s *Study) Worst(w *circuit.Wire) *Overload { return s.worst[w.Index] }

// Compute finds the overloads of every wire. Running currents are those of the
// solutions that converged, circuit.Alone's among them; a motor that stands draws its starting current for
// good, or the library's multiple of its running current where none is given.
func Compute(c *circuit.Circuit, sols []*solve.Solution, faults *fault.Study) *Study {
	s := &study{Study: &Study{make([]*Overload, len(c.Wires)), make([][]*Overload, len(c.Wires))}, c: c, faults: faults,
		running: make([]float64, len(c.Branches)), together: make([]float64, len(c.Branches)),
		used: make([]float64, len(c.Branches)), steady: make([]float64, len(c.Branches))}
	for _, sol := range sols {
		if sol.Status != solve.Converged {
			continue
		}
		for i, a := range sol.BranchA {
			if a = math.Abs(a); !math.IsInf(a, 0) {
				s.running[i] = math.Max(s.running[i], a)
			}
		}
	}
	ways := s.ways()
	for _, way := range ways {
		for _, b := range way.branches {
			s.add(way, b)
		}
	}
	s.leaveApart(ways)
	s.useTogether(ways, sols)
	for _, way := range ways {
		s.allAtOnce(way)
		if l := way.load.Load; l.Behaves == design.Motor && !(l.Load != nil && l.Load.Sign == design.SignHorn) { // a horn cannot be blocked
			s.stands(way, sols)
		}
	}
	return s.Study
}

type study struct {
	*Study
	c                 *circuit.Circuit
	faults            *fault.Study
	running, together []float64 // by branch
	used              []float64 // by branch: the most of together that one situation has on
	steady            []float64 // of together, what may flow for good, by a wire's branch
}

// way is a load with the branches that its current passes.
type way struct {
	load     *circuit.Branch
	drawsA   float64
	branches []*circuit.Branch
}

func (s *study) ways() []way {
	var out []way
	for _, b := range s.c.Branches {
		if b.Load == nil || b.Load.Load == nil || b.Load.Standby || b.Part == nil || b.Follows() && b.Load.Behaves != design.Motor {
			continue
		}
		w := way{load: b, drawsA: s.c.DrawA(b)}
		plus, minus := b.Part.Terminal("+"), b.Part.Terminal("-")
		if plus == nil || minus == nil {
			continue
		}
		w.branches = append(w.branches, circuit.Abreast(s.c.MainFeed(plus.Node).Branches)...)
		for back := range s.c.WaysHome(plus.Node, minus.Node) {
			w.branches = append(w.branches, back)
		}
		out = append(out, w)
	}
	return out
}

// leaveApart takes from what all loads draw at once what contacts keep from being on then.
func (s *study) leaveApart(ways []way) {
	exclusive := s.c.Exclusive()
	if exclusive.None() {
		return
	}
	through := map[*circuit.Branch][]way{}
	for _, way := range ways {
		for _, b := range way.branches {
			through[b] = append(through[b], way)
		}
	}
	for b, ways := range through {
		var loads []*circuit.Branch
		for _, way := range ways {
			loads = append(loads, way.load)
		}
		on := exclusive.AtOnce(loads)
		if len(on) == len(loads) {
			continue
		}
		s.together[b.Index], s.steady[b.Index] = 0, 0
		for _, way := range ways {
			if slices.Contains(on, way.load) {
				s.add(way, b)
			}
		}
	}
}

// add counts a way's current in a branch of it.
func (s *study) add(w way, b *circuit.Branch) {
	s.together[b.Index] += b.ShareA(w.drawsA)
	if b.Wire != nil && !b.TimeOn.Covers(w.load.Load.Load) {
		s.steady[b.Index] += b.ShareA(w.drawsA)
	}
}

// useTogether finds what the loads of one situation draw: no more than that at once
// is use, and wire-over-current's.
func (s *study) useTogether(ways []way, sols []*solve.Solution) {
	now := make([]float64, len(s.used))
	for _, sol := range sols {
		clear(now)
		for _, way := range ways {
			if sol.On(way.load) {
				for _, b := range way.branches {
					now[b.Index] += b.ShareA(way.drawsA)
				}
			}
		}
		for i, a := range now {
			s.used[i] = math.Max(s.used[i], a)
		}
	}
}

// allAtOnce holds a way against all loads that share its branches.
func (s *study) allAtOnce(w way) {
	var fuses []passed
	for _, b := range w.branches {
		if b.Kind == circuit.FuseBranch {
			fuses = append(fuses, passed{b, s.together[b.Index]})
		}
	}
	for _, b := range w.branches {
		if b.Wire == nil || s.together[b.Index] <= max(s.running[b.Index], s.used[b.Index]) {
			continue
		}
		// Each for no longer than it is on: when the wire bears them so, nothing need open.
		amps := s.together[b.Index]
		forGoodA := s.faults.Wires.ForGoodA(b.Wire, amps, s.steady[b.Index])
		if !math.IsInf(s.faults.Wires.Damage(b.Wire).TimeS(forGoodA), 1) {
			s.take(&Overload{Wire: b.Wire, Amps: amps}, forGoodA, fuses)
		}
	}
}

// stands holds a way against its motor standing while the rest runs on; where resistors hold it back, the way
// of each situation that has it on.
func (s *study) stands(w way, sols []*solve.Solution) {
	stalledA := s.c.StalledA(w.load)
	if w.load.Load.FanStall > 0 { // it runs with more where it has more than its rated volts
		for _, sol := range sols {
			if sol.On(w.load) {
				w.drawsA = math.Max(w.drawsA, math.Abs(sol.Amps(w.load)))
			}
		}
	}
	if !slices.ContainsFunc(sols, func(sol *solve.Solution) bool { return sol.On(w.load) && sol.HeldV(w.load) > 0 }) {
		s.standsBy(w, stalledA)
		return
	}
	for _, sol := range sols {
		if !sol.On(w.load) {
			continue
		}
		by := w
		by.branches = nil
		for _, way := range s.c.WaysIn(w.load.Part, sol.BranchA) {
			by.branches = append(by.branches, circuit.Abreast(way.Branches)...)
		}
		s.standsBy(by, HeldBackA(sol, w.load, stalledA))
	}
}

// HeldBackA is what is left of the current of a motor that stands with the resistors before and behind it, as a
// situation has it on.
func HeldBackA(sol *solve.Solution, motor *circuit.Branch, stalledA float64) float64 {
	return motor.Load.RatedV / (motor.Load.RatedV/stalledA + sol.HeldV(motor)/math.Abs(sol.Amps(motor)))
}

// standsBy holds a way against its motor standing at a current.
func (s *study) standsBy(w way, stalledA float64) {
	moreA := stalledA - w.drawsA
	var fuses []passed
	for _, b := range w.branches {
		if b.Kind == circuit.FuseBranch {
			fuses = append(fuses, passed{b, s.with(b, w, moreA)})
		}
	}
	for _, b := range w.branches {
		if b.Wire != nil {
			amps := s.with(b, w, moreA)
			s.take(&Overload{Wire: b.Wire, Blocked: w.load, Amps: amps}, amps, fuses)
		}
	}
}

// with is a branch's current with a motor of the way blocked.
func (s *study) with(b *circuit.Branch, w way, moreA float64) float64 {
	return math.Max(s.running[b.Index], b.ShareA(w.drawsA)) + b.ShareA(moreA)
}

// passed is a fuse with the current that it passes.
type passed struct {
	fuse *circuit.Branch
	amps float64
}

// take keeps an overload where it is worst for the wire, which in the end it heats as
// another current for good does. A fuse must beat the overload limit of the wire; what
// no fuse ever ends must not pass its class.
func (s *study) take(o *Overload, forGoodA float64, fuses []passed) {
	o.Bare, o.OpensS = len(fuses) == 0, math.Inf(1)
	for _, p := range fuses {
		if d, _ := s.faults.Device(p.fuse); d.Rating != nil {
			if at := latest(d, p.amps); at < o.OpensS {
				o.OpensS, o.Device = at, p.fuse
			}
		}
	}
	damage := s.faults.Wires.Damage(o.Wire)
	if o.StandsS = damage.FaultTimeS(o.Amps); o.Device == nil {
		o.StandsS = damage.TimeS(o.Amps)
		o.Ruins = !math.IsInf(damage.FaultTimeS(forGoodA), 1)
	}
	if o.Hurts() {
		s.hurt[o.Wire.Index] = append(s.hurt[o.Wire.Index], o)
	}
	if was := s.worst[o.Wire.Index]; !math.IsInf(o.StandsS, 1) && (was == nil || Compare(o, was) < 0) {
		s.worst[o.Wire.Index] = o
	}
}

// latest is a device's latest opening; +Inf where none is published.
func latest(d fusing.Device, amps float64) float64 {
	if o := d.Open(amps); o.SlowKnown {
		return o.SlowS
	}
	return math.Inf(1)
}
