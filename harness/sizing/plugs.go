package sizing

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

// plugBears tells whether a family has a way for each wire, is sealed where the
// place is wet or petrol vapour can gather, and takes each wire: in its size where that is given, else in
// one that could do.
func (w *view) plugBears(i, k int) bool { return w.plugCould(i, k, 1) }

// plugCould is plugBears with currents at a share of the estimate.
func (w *view) plugCould(i, k int, share float64) bool {
	s, part := w.s.slots[i], w.v.c.PartOf(w.s.slots[i].owner)
	if part == nil {
		return true
	}
	was := s.at
	defer s.set(was)
	s.set(k)
	wires := w.wiresAt(part)
	if s.plugs[k].Housing(len(wires)) == 0 || part.Place != nil && (part.Place.Wet || part.Place.PetrolVapour) && !s.plugs[k].Sealed {
		return false
	}
	for _, x := range wires {
		if !w.someSize(x, share) {
			return false
		}
	}
	return true
}

// wiresAt are the wires that end at a part, or pass it where it is a connector of the loom.
func (w *view) wiresAt(p *circuit.Part) []*circuit.Wire {
	var list []*circuit.Wire
	if x := w.v.c.InlineOf(p); x != nil {
		for _, pole := range x.Poles {
			list = append(list, pole.Wire)
		}
	}
	for _, t := range p.Terminals {
		list = append(list, t.Wires...)
	}
	return list
}

// someSize tells whether the ends of a wire, as they are now, take it in a size
// that it has or could have.
func (w *view) someSize(x *circuit.Wire, share float64) bool {
	i := w.slotOf[x.Branch.Index]
	if i < 0 {
		return w.crimps(x, x.Spec.Size, share)
	}
	least := w.s.floor[i]
	if share < 1 { // for the proof, which knows no lessons
		least = 0
	}
	for z, size := range w.s.slots[i].sizes {
		if z >= least && w.crimps(x, size, share) && w.stands(x, size, share) {
			return true
		}
	}
	return false
}

// raisePlugs raises the plugs at the ends of the wire that a finding is about:
// those that do not take it as it is.
func (w *view) raisePlugs(f *finding.Finding) bool {
	taught := false
	for _, x := range w.v.c.Wires {
		if x.Number != f.Ref {
			continue
		}
		for k, p := range w.poles(x, x.Spec.Size) {
			i, ok := w.plugSlot[x.Poles[k].Inline.Part]
			if ok && !p.takes(w.amps[x.Branch.Index], w.corner[x.Branch.Index]) {
				taught = w.raise(i) || taught
			}
		}
		for end, p := range []*circuit.Part{x.From.Part, x.To.Part} {
			i, ok := w.plugSlot[p]
			if ok && !w.ends(x, x.Spec.Size)[end].takes(w.amps[x.Branch.Index], w.corner[x.Branch.Index]) {
				taught = w.raise(i) || taught
			}
		}
	}
	return taught
}

// plugsOf are the slots of the plugs that a load's current passes: its own, and the connectors
// of the loom on its wires.
func (w *view) plugsOf(d *drop) (list []int) {
	add := func(p *circuit.Part) {
		if i, ok := w.plugSlot[p]; ok && !slices.Contains(list, i) {
			list = append(list, i)
		}
	}
	add(d.load.Part)
	for _, t := range d.terms {
		if t.wire == nil {
			continue
		}
		for _, pole := range t.wire.Poles {
			add(pole.Inline.Part)
		}
	}
	return list
}

// raiseWay raises the plugs of a load that loses too much on any wires: larger
// contacts lose less and take thicker wire.
func (w *view) raiseWay(d *drop) (raised bool) {
	for _, i := range w.plugsOf(d) {
		raised = w.raise(i) || raised
	}
	return raised
}

// widen takes plugs that keep hopeless loads from thicker wires to the next
// family that takes thicker ones; true when there was one.
func (w *view) widen() bool {
	widened := false
	for _, d := range w.drops {
		if !w.s.hopeless[d.load.Load.Load.Name] || math.IsInf(d.aimV, 1) {
			continue
		}
		for _, i := range w.plugsOf(d) {
			s := w.s.slots[i]
			for k := s.at + 1; k < len(s.plugs); k++ {
				if s.plugs[k].MaxMm2 > s.plugs[s.at].MaxMm2 && w.plugBears(i, k) {
					s.set(k)
					widened = true
					break
				}
			}
		}
	}
	return widened
}

// tryPlugs tries every other family for each plug, then one for all plugs that
// could have it: fewer families may be worth larger ones.
func (s *search) tryPlugs() {
	w := s.look(s.best.verdict)
	var plugs []int
	most := 0
	for i, x := range s.slots {
		if x.kind == Plug {
			plugs = append(plugs, i)
			most = max(most, len(x.plugs))
		}
	}
	for _, i := range plugs {
		for k := range s.slots[i].plugs {
			if k != s.best.at[i] && w.plugBears(i, k) {
				s.slots[i].set(k)
				s.tryWires(w)
			}
		}
	}
	for k := 0; k < most && len(plugs) > 1; k++ {
		w.eachPlug(func(i int) {
			if k < len(s.slots[i].plugs) && w.plugBears(i, k) {
				s.slots[i].set(k)
			}
		})
		s.tryWires(w)
	}
}

// choosePlugs sets every plug to the first family that bears what it must.
func (w *view) choosePlugs() {
	w.eachPlug(func(i int) { w.chooseFor(i, w.plugBears) })
}

// eachPlug goes through the plugs to be chosen. Those that still come are no hindrance: what
// they hold now need not be what they will, and two on one wire would bind each other to it.
func (w *view) eachPlug(choose func(i int)) {
	w.unchosen = map[*circuit.Part]bool{}
	for p := range w.plugSlot {
		w.unchosen[p] = true
	}
	for i, x := range w.s.slots {
		if x.kind == Plug {
			delete(w.unchosen, w.v.c.PartOf(x.owner))
			choose(i)
		}
	}
	w.unchosen = nil
}
