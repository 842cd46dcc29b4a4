package sizing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

// lacking says of each relay and block left open that nothing in the library bears
// what it carries where it stands; before those, of each relay, that no coil is for
// the system's voltage.
func (s *search) lacking() (list []string) {
	w := s.look(s.best.verdict)
	for i, x := range s.slots {
		if s.lacks(x) {
			list = slices.Insert(list, 0, fmt.Sprintf("no relay with a coil of %g V in the library: none is chosen for %s; the nearest is %g V",
				s.d.SystemV.Value, x.part, nearestCoilV(s.d)))
			continue
		}
		if text := s.lacksProof(x); text != "" {
			list = append(list, text)
		}
		if text := w.lacksBreaking(i); text != "" {
			list = append(list, text)
		}
		bears := map[Kind]func(i, k int) bool{RelayForm: w.contactsBear, BlockType: w.blockBears}[x.kind]
		if bears == nil || w.v.c.PartOf(x.owner) == nil || someBear(x, func(k int) bool { return bears(i, k) }) {
			continue
		}
		list = append(list, fmt.Sprintf("no %[1]s in the library is rated for the %[3]s that %[2]s carries", x.kind, x.part,
			quantity.Format(w.mostA(w.v.c.PartOf(x.owner)), quantity.Current)))
	}
	return list
}

// lacksBreaking says of a fuse next to the battery that none of about its rating that would do
// otherwise breaks the short behind it; "" = it does, or is not chosen.
func (w *view) lacksBreaking(i int) string {
	x, b := w.s.slots[i], w.branch[i]
	if b == nil || b.Fuse == nil || len(w.guards[b.Index].Fuses) > 0 {
		return ""
	}
	f, breaks := w.v.protection.Find(b), fault.BreaksA(w.v.c, b)
	if f == nil || f.FaultA <= breaks {
		return ""
	}
	shortA, breaksA := quantity.Against(f.FaultA, breaks, quantity.Current)
	return fmt.Sprintf("%s: no fuse of about %s that suits the wires of %s breaks the %s that a short just behind it can drive: the %s breaks %s%s",
		b.Part.Pos, quantity.Plain(b.Fuse.Rating.RatingA, quantity.Current), x.part, shortA, x.fuses[x.at].kind.Name, breaksA, w.firstBefore(f.FaultA))
}

// firstBefore names the types of fuse that break a short, to be put before one that does not; "" = there are none.
func (w *view) firstBefore(shortA float64) string {
	afloat := w.s.d.Practice != nil && w.s.d.Practice.Afloat
	var names []string
	for _, t := range w.s.d.Library.FuseTypes {
		if t.Kind == "fuse" && (afloat || !t.Afloat) && t.BreakingAt(w.s.d.NominalV()) >= shortA {
			names = append(names, t.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "; put one that does before it, at the battery, where it breaks the short: " + wording.Or(names)
}

// lacks tells whether the library has no candidate for a slot: what stands in the design
// for the time being is no choice.
func (s *search) lacks(x *slot) bool {
	return x.kind == RelayForm && x.forms[0].CoilV != s.d.SystemV.Value
}

func someBear(x *slot, bears func(k int) bool) bool {
	for k := range x.count() {
		if bears(k) {
			return true
		}
	}
	return false
}

// mostA is the greatest current of a part's contacts or ways at nominal.
func (w *view) mostA(p *circuit.Part) (most float64) {
	for _, b := range p.Branches {
		most = max(most, w.amps[b.Index])
	}
	return most
}

// nearestCoilV is the coil voltage in the library that is nearest to the system's.
func nearestCoilV(d *design.Design) float64 {
	away := func(f *library.RelayForm) float64 { return math.Abs(f.CoilV - d.SystemV.Value) }
	return slices.MinFunc(d.Library.RelayForms, func(a, b *library.RelayForm) int { return cmp.Compare(away(a), away(b)) }).CoilV
}
