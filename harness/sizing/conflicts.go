package sizing

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// Conflict is why a finding stays: what would mend it breaks another constraint.
type Conflict struct {
	Of      *finding.Finding // one of Plan.Remaining
	Mend    string           // "thicker wires"
	Against *finding.Finding // what the mending brings
}

// mostConflicts is of how many findings the conflicts are looked for.
const mostConflicts = 8

// mends are the directions in which choices can give way, with the words for it.
var mends = []struct {
	words string
	kind  Kind
	by    int
}{{"thicker wires", WireSize, 1}, {"thinner wires", WireSize, -1}, {"larger fuses", Fuse, 1},
	{"smaller fuses", Fuse, -1}, {"a stronger relay", RelayForm, 1}, {"a larger block", BlockType, 1},
	{"a larger plug", Plug, 1}}

// conflicts moves the choices on the way of each finding that is left in every
// direction, as little as it takes to be rid of the finding, and notes what goes
// wrong instead.
func (s *search) conflicts() []*Conflict {
	w := s.look(s.best.verdict)
	a := w.findApart()
	var list []*Conflict
	for n, f := range s.best.verdict.findings {
		if n == mostConflicts {
			break
		}
		for _, m := range mends {
			if m.by < 0 && m.kind == WireSize && (aboutVoltage(f) || rules.Find(f.Rule).InUse) {
				continue
			}
			slots := s.concernedBy(a, w, f, m.kind)
			if against := nearest(s.yield(f, slots, m.by), w.refsOf(slots)); against != nil {
				list = append(list, &Conflict{f, m.words, against})
			}
		}
	}
	return list
}

// aboutVoltage tells whether a finding is that a load gets too little: nothing
// thinner mends it.
func aboutVoltage(f *finding.Finding) bool {
	m := rules.Find(f.Rule).Mend
	return m == rules.MendDrop || m == rules.MendLowest
}

// concernedBy are the slots of a kind on the way of the part that a finding is
// about; of fuses, the one itself when the finding is about one.
func (s *search) concernedBy(a *apart, w *view, f *finding.Finding, kind Kind) []int {
	touched := make([]bool, a.count)
	for _, b := range a.byRef[f.Ref] {
		if i := w.slotOf[b.Index]; i >= 0 && b.Kind == circuit.FuseBranch && kind == Fuse {
			return []int{i}
		}
		for _, k := range a.below[b.Index] {
			touched[k] = true
		}
	}
	var list []int
	for i, x := range s.slots {
		if x.kind == kind && overlap(touched, a.consumers[i]) {
			list = append(list, i)
		}
	}
	return list
}

// refsOf are the designations of what slots set.
func (w *view) refsOf(slots []int) map[string]bool {
	refs := map[string]bool{}
	for _, i := range slots {
		for _, b := range w.sets[i] {
			refs[refOf(b)] = true
		}
	}
	return refs
}

// refOf is the designation of the wire, the fuse or the part of a branch.
func refOf(b *circuit.Branch) string {
	switch {
	case b.Wire != nil:
		return b.Wire.Number
	case b.Fuse != nil:
		return b.Fuse.Ref
	}
	return b.Part.Ref
}

// nearest is the first finding about one of the things that were moved, else
// the first; nil of none.
func nearest(list []*finding.Finding, moved map[string]bool) *finding.Finding {
	if len(list) == 0 {
		return nil
	}
	return list[max(0, slices.IndexFunc(list, func(f *finding.Finding) bool { return moved[f.Ref] }))]
}

// mostSteps bounds how far choices give way.
const mostSteps = 6

// yield moves slots together until a finding is gone and gives the new ones, the
// gravest first; nil when the finding stays however far they move.
func (s *search) yield(f *finding.Finding, slots []int, by int) []*finding.Finding {
	if len(slots) == 0 || s.moved(f, slots, by*mostSteps) == nil {
		return nil
	}
	for steps := 1; ; steps++ {
		if v := s.moved(f, slots, by*steps); v != nil || steps == mostSteps {
			return s.allNew(s.best.verdict.findings, v.findings)
		}
	}
}

// moved judges with slots moved by so many candidates, or as far as they have
// any; nil when a finding stays.
func (s *search) moved(f *finding.Finding, slots []int, by int) *verdict {
	defer s.take(s.best)
	for _, i := range slots {
		s.slots[i].step(by)
	}
	v, err := s.judge()
	if err != nil || slices.ContainsFunc(v.findings, func(x *finding.Finding) bool { return idOf(x) == idOf(f) }) {
		return nil
	}
	return v
}

// step moves a slot by so many candidates, or as far as there are any; fuses
// stay of their type.
func (x *slot) step(by int) {
	to := x.at
	for sign := max(-1, min(1, by)); by != 0; by -= sign {
		next := to + sign
		if next < 0 || next >= x.count() || x.kind == Fuse && x.fuses[next].kind != x.fuses[x.at].kind {
			break
		}
		to = next
	}
	x.set(to)
}
