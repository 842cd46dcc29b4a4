package sizing

import (
	"math"
	"slices"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/fault"
)

// learn raises the floors of the slots that findings point at, so that the next
// round does not choose the same again. True when anything was raised.
func (s *search) learn(v *verdict) bool {
	w := s.look(v)
	taught := false
	for _, f := range v.findings {
		taught = w.lesson(f) || taught
	}
	return taught
}

// lesson takes one finding to heart.
func (w *view) lesson(f *finding.Finding) bool {
	switch rules.Find(f.Rule).Mend {
	case rules.MendDrop, rules.MendLowest:
		return w.tighten(f.Part)
	case rules.MendShort:
		return w.raiseWeak(f)
	case rules.MendFuseAbove:
		return w.raiseAbove(f)
	case rules.MendPlug:
		if w.raisePlugs(f) {
			return true
		}
	case rules.MendPart, rules.MendSeal:
		return w.raisePart(f.Part, Plug) || w.raisePart(f.Part, BlockType)
	case rules.MendSpark:
		return w.raisePart(f.Part, Plug) || w.raisePart(f.Part, RelayForm)
	case rules.MendRelay:
		return w.raisePart(f.Part, RelayForm)
	case rules.MendLink:
		if w.raise(w.named(f.Ref, Fuse)) || w.raisePart(f.Part, RelayForm) {
			return true
		}
	case rules.MendBlock:
		return w.raisePart(f.Part, BlockType)
	case rules.MendBreaking:
		return w.raiseBreaking(f)
	case rules.MendFuse:
		return w.raise(w.named(f.Ref, Fuse))
	case rules.MendStart:
		return w.raiseFuseOf(f.Part)
	}
	return w.raise(w.named(f.Ref, WireSize))
}

// named is the slot of the wire or fuse of a designation; -1 = none.
func (w *view) named(ref string, kind Kind) int {
	for i, s := range w.s.slots {
		if s.kind == kind && slices.ContainsFunc(w.sets[i], func(b *circuit.Branch) bool { return refOf(b) == ref }) {
			return i
		}
	}
	return -1
}

// tighten aims a little below the limit of a load's drop: the estimate was low.
// Where the estimate saw it too, no wire helps: only a larger plug may.
func (w *view) tighten(load string) bool {
	t := w.s.tighter(load)
	for _, d := range w.drops {
		if d.load.Load.Load.Name != load || len(d.terms) == 0 {
			continue
		}
		if w.s.hopeless[load] {
			return !math.IsInf(d.aimV, 1) && w.raiseWay(d)
		}
		if t > 0.5 {
			w.s.tight[load] = t * 0.985
			w.s.tuned++
			return true
		}
	}
	return false
}

// raise forbids the present candidate and those below; false where it can not.
func (w *view) raise(i int) bool {
	if i < 0 {
		return false
	}
	s := w.s.slots[i]
	if s.at+1 >= s.count() || w.s.floor[i] > s.at {
		return false
	}
	w.s.floor[i] = s.at + 1
	if s.kind == Fuse && s.mostA > 0 {
		s.mostA = max(s.mostA, s.fuses[s.at+1].rating.RatingA)
	}
	return true
}

func (w *view) raisePart(name string, kind Kind) bool {
	return w.raise(slices.IndexFunc(w.s.slots, func(s *slot) bool {
		return s.kind == kind && (s.owner.PartName() == name || strings.HasPrefix(name, s.owner.PartName()+" "))
	}))
}

// raiseFuseOf raises the nearest fuse before a load.
func (w *view) raiseFuseOf(load string) bool {
	return w.raise(slices.IndexFunc(w.branch, func(b *circuit.Branch) bool {
		return b != nil && slices.ContainsFunc(w.v.c.BelowBranch(b).Loads, func(x *circuit.Branch) bool {
			return x.Part.Name == load && w.isNearest(b, x)
		})
	}))
}

// raiseBreaking goes on to the next fuse type that breaks more.
func (w *view) raiseBreaking(f *finding.Finding) bool {
	i := w.named(f.Ref, Fuse)
	if i < 0 {
		return false
	}
	s := w.s.slots[i]
	for k := s.at + 1; k < len(s.fuses); k++ {
		if v := w.v.c.Design.NominalV(); s.fuses[k].kind.BreakingAt(v) > s.fuses[s.at].kind.BreakingAt(v) {
			w.s.floor[i] = max(w.s.floor[i], k)
			return true
		}
	}
	return false
}

// raiseAbove raises the fuse above the one that a finding is about.
func (w *view) raiseAbove(f *finding.Finding) bool {
	for _, b := range w.v.c.Branches {
		if b.Kind != circuit.FuseBranch || b.Fuse == nil || b.Fuse.Ref != f.Ref || b.Fuse.Factory {
			continue
		}
		for _, up := range w.guards[b.Index].Fuses {
			if i := w.slotOf[up.Index]; i >= 0 {
				return w.raise(i)
			}
		}
	}
	return false
}

// raiseWeak thickens the wire with most resistance on the way to a short that
// is too weak for its fuse.
func (w *view) raiseWeak(f *finding.Finding) bool {
	for _, sh := range w.v.faults.Shorts {
		r := &sh.Results[fault.Weak]
		if !sh.Fed || !r.TooWeak() || (sh.Wire == nil || sh.Wire.Number != f.Ref) && (sh.Part == nil || sh.Part.Ref != f.Ref) {
			continue
		}
		if most := w.mostOhm(w.wayTo(sh)); most != nil {
			return w.raise(w.slotOf[most.Branch.Index])
		}
	}
	return false
}

// wayTo lists the wires that the current of a short passes.
func (w *view) wayTo(sh *fault.Short) []*circuit.Wire {
	c := w.v.c
	if sh.Wire != nil {
		list := append(c.MainFeed(sh.Wire.From.Node).Wires(), sh.Wire)
		if p := sh.Wire.To.Part; p.Kind == circuit.Load && sh.Where == fault.FarEnd {
			list = append(list, w.back(sh.Wire.From.Node, p.Terminal("-").Node).Wires()...)
		}
		return list
	}
	return append(c.MainFeed(sh.Branch.A).Wires(), w.back(sh.Branch.A, sh.Branch.B).Wires()...)
}

// mostOhm is the open wire of a list with most resistance.
func (w *view) mostOhm(list []*circuit.Wire) *circuit.Wire {
	var most *circuit.Wire
	for _, x := range list {
		if x.Spec.SizeAuto && (most == nil || x.Branch.Ohm > most.Branch.Ohm) {
			most = x
		}
	}
	return most
}
