package sizing

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Limits of the sets of sizes that are tried: how many sizes stand in every
// combination, and how many choices of a wire all sets together may come to.
const (
	maxPalette = 9
	maxWithin  = 12_000
)

// chooseWires shares out copper: within each set of stock sizes every wire takes
// the smallest that its own constraints let through, then wires on the way of
// loads that lose too much grow where a volt costs least, then what grew in
// vain shrinks again. The cheapest set wins, and single changes better it.
func (w *view) chooseWires() {
	ok := w.openSizes()
	w.aim(ok)
	var best *sharing
	bestG, bestOver := math.Inf(1), math.Inf(1)
	for _, set := range w.palettes(ok) {
		s, possible := w.within(ok, set)
		if !possible {
			continue
		}
		g, over := w.estimateG(s.at), s.overV()
		if over < bestOver-1e-9 || over < bestOver+1e-9 && g < bestG-1e-9 {
			best, bestG, bestOver = s, g, over
		}
	}
	w.s.hopeless = map[string]bool{}
	for k, d := range w.drops {
		if best.lostV[k] > d.limitV+1e-9 {
			w.s.hopeless[d.load.Load.Load.Name] = true
		}
	}
	best.improve(ok)
	for i, s := range w.s.slots {
		if s.kind == WireSize {
			s.set(best.at[i])
		}
	}
}

// present is the candidate of every slot.
func (w *view) present() []int {
	at := make([]int, len(w.s.slots))
	for i, s := range w.s.slots {
		at[i] = s.at
	}
	return at
}

// openSizes lists of every wire slot the sizes that meet its own constraints and
// what the rules have taught; a slot with none keeps the largest that its
// crimps take.
func (w *view) openSizes() [][]int {
	ok, thickest := make([][]int, len(w.s.slots)), w.thickest()
	for i, s := range w.s.slots {
		if s.kind != WireSize {
			continue
		}
		for z := w.s.floor[i]; z < len(s.sizes); z++ {
			if w.fits(i, z) {
				ok[i] = append(ok[i], z)
			}
		}
		if ok[i] == nil {
			ok[i] = []int{thickest[i]}
		}
	}
	w.abreast(ok)
	return ok
}

// crimpsAll tells whether the wires of a slot can be ended in a size.
func (w *view) crimpsAll(i, z int) bool {
	for _, x := range w.wires[i] {
		if !w.crimps(x, w.s.slots[i].sizes[z], 0) {
			return false
		}
	}
	return true
}

// palette is a set of stock sizes.
type palette map[*library.WireSize]bool

// palettes are the sets of sizes to try, by size: every combination of the
// sizes from the smallest needed up to twice past the largest needed, the
// largest always among them; all sizes when there are too many.
func (w *view) palettes(ok [][]int) []palette {
	lowest, highest := math.Inf(1), 0.0
	for i, list := range ok {
		if list != nil {
			first := w.s.slots[i].sizes[list[0]].AreaMm2
			lowest, highest = math.Min(lowest, first), math.Max(highest, first)
		}
	}
	var sizes []*library.WireSize
	all := palette{}
	for i, list := range ok {
		for _, z := range list {
			if size := w.s.slots[i].sizes[z]; size.AreaMm2 >= lowest && !all[size] {
				all[size] = true
				sizes = append(sizes, size)
			}
		}
	}
	sizes = ascending(sizes, func(z *library.WireSize) float64 { return z.AreaMm2 })
	// The sizes in every combination: those up to two past the largest that a
	// wire needs by itself; the rest stand in every set, for drop.
	n := 0
	for n < len(sizes) && (sizes[n].AreaMm2 <= highest || n < 2) {
		n++
	}
	n = min(n+2, len(sizes), maxPalette)
	most := maxWithin
	if w.s.quick {
		most /= 4
	}
	for n > 1 && len(w.s.slots)<<n > most {
		n--
	}
	sets := []palette{all}
	for mask := 0; mask < 1<<n; mask++ {
		set := palette{}
		for k, z := range sizes {
			if k >= n || mask>>k&1 == 1 {
				set[z] = true
			}
		}
		sets = append(sets, set)
	}
	return sets
}

// within chooses from a set of sizes; false when a slot has no size in the set.
func (w *view) within(ok [][]int, set palette) (*sharing, bool) {
	s := &sharing{w: w, at: w.present(), sizes: make([][]int, len(ok))}
	for i, list := range ok {
		for _, z := range list {
			if set[w.s.slots[i].sizes[z]] {
				s.sizes[i] = append(s.sizes[i], z)
			}
		}
		if list == nil {
			continue
		}
		if s.sizes[i] == nil {
			return nil, false
		}
		s.at[i] = s.sizes[i][0]
	}
	for _, d := range w.drops {
		s.lostV = append(s.lostV, w.predicted(d, s.at))
	}
	for {
		worst := s.worstDrop()
		if worst == nil {
			break
		}
		i, z := s.cheapestVolt(worst)
		if z < 0 {
			break
		}
		s.take(i, z)
	}
	s.shrink()
	return s, true
}

// estimateG is the cost of candidates, fuses left out.
func (w *view) estimateG(at []int) float64 {
	l := w.ledgerOf(at)
	return l.wiresG()
}

func (w *view) ledgerOf(at []int) *ledger {
	l := &ledger{}
	for _, x := range w.v.c.Wires {
		l.put(w.piece(x, w.sizeWith(x, at)), 1)
	}
	for _, p := range w.v.c.Parts {
		if f := w.plugOf(p); f != nil {
			l.plug(w.s.number(f), isOpen(p), f.MaxA, 1)
		}
	}
	for i, s := range w.s.slots {
		if s.kind == WireSize {
			l.ThickG += s.thickG(at[i])
		}
	}
	return l
}

// sizeWith is the size of a wire as given, or as chosen by slot.
func (w *view) sizeWith(x *circuit.Wire, at []int) *library.WireSize {
	if i := w.slotOf[x.Branch.Index]; i >= 0 {
		return w.s.slots[i].sizes[at[i]]
	}
	return x.Spec.Size
}

// swap takes a slot's wires from one size to another in a ledger.
func (w *view) swap(l *ledger, i, from, to int) {
	s := w.s.slots[i]
	l.ThickG += s.thickG(to) - s.thickG(from)
	for _, x := range w.wires[i] {
		l.put(w.piece(x, s.sizes[from]), -1)
		l.put(w.piece(x, s.sizes[to]), 1)
	}
}

// slotG is the copper of a slot's wires in a size, and what its thickness counts.
func (w *view) slotG(i, z int) float64 {
	g := w.s.slots[i].thickG(z)
	for _, x := range w.wires[i] {
		g += copperG(x, w.s.slots[i].sizes[z])
	}
	return g
}

// guess is the estimated cost of the present choices.
func (w *view) guess() float64 {
	g := w.estimateG(w.present())
	for _, s := range w.s.slots {
		if s.kind == Fuse {
			g += s.fuses[s.at].costG()
		}
	}
	return g
}

// improve makes single changes as long as one lowers the cost and no load
// loses more: one wire to another size that is in use anyway, or to the smallest
// that it may have.
func (s *sharing) improve(ok [][]int) {
	w := s.w
	l := w.ledgerOf(s.at)
	cost := l.wiresG()
	for again, rounds := true, 0; again && rounds < 20; rounds++ {
		again = false
		used := palette{}
		for i, list := range ok {
			if list != nil {
				used[w.s.slots[i].sizes[s.at[i]]] = true
			}
		}
		for i, list := range ok {
			for _, z := range list {
				if z == s.at[i] || z != list[0] && !used[w.s.slots[i].sizes[z]] || !s.spare(i, z) {
					continue
				}
				w.swap(l, i, s.at[i], z)
				if g := l.wiresG(); g < cost-1e-9 {
					cost, again = g, true
					s.take(i, z)
				} else {
					w.swap(l, i, z, s.at[i])
				}
			}
		}
	}
}
