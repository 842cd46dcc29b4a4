package sizing

import (
	"math"
	"slices"

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
	best, bestG, bestOver := w.present(), math.Inf(1), math.Inf(1)
	for _, set := range w.palettes(ok) {
		at, over := w.within(ok, set)
		g := w.estimateG(at)
		if over < bestOver-1e-9 || over < bestOver+1e-9 && g < bestG-1e-9 {
			best, bestG, bestOver = at, g, over
		}
	}
	w.s.hopeless = map[string]bool{}
	for _, d := range w.drops {
		if w.predicted(d, best) > d.limitV+1e-9 {
			w.s.hopeless[d.load.Load.Load.Name] = true
		}
	}
	w.improve(ok, best)
	for i, s := range w.s.slots {
		if s.kind == WireSize {
			s.set(best[i])
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

// openSizes tells of every wire slot which sizes meet its own constraints and
// what the rules have taught; a slot with none keeps the largest that its
// crimps take.
func (w *view) openSizes() [][]bool {
	ok := make([][]bool, len(w.s.slots))
	for i, s := range w.s.slots {
		if s.kind != WireSize {
			continue
		}
		ok[i] = make([]bool, len(s.sizes))
		last := len(s.sizes) - 1
		for z := range s.sizes {
			ok[i][z] = z >= w.s.floor[i] && w.fits(i, z, 1)
		}
		if !slices.Contains(ok[i], true) {
			for z := last; z > 0 && !w.crimpsAll(i, z); z-- {
				last = z - 1
			}
			ok[i][last] = true
		}
	}
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

// palettes are the sets of sizes to try, by size: every combination of the
// sizes from the smallest needed up to twice past the largest needed, the
// largest always among them; all sizes when there are too many.
func (w *view) palettes(ok [][]bool) []map[*library.WireSize]bool {
	var sizes []*library.WireSize
	lowest, highest := math.Inf(1), 0.0
	for i, s := range w.s.slots {
		if s.kind == WireSize {
			first := s.sizes[slices.Index(ok[i], true)].AreaMm2
			lowest, highest = math.Min(lowest, first), math.Max(highest, first)
		}
	}
	for i, s := range w.s.slots {
		if s.kind != WireSize {
			continue
		}
		for z, size := range s.sizes {
			if ok[i][z] && size.AreaMm2 >= lowest && !slices.Contains(sizes, size) {
				sizes = append(sizes, size)
			}
		}
	}
	sizes = ascending(sizes, func(z *library.WireSize) float64 { return z.AreaMm2 })
	all := map[*library.WireSize]bool{}
	for _, z := range sizes {
		all[z] = true
	}
	sets := []map[*library.WireSize]bool{all}
	// The sizes in every combination: those up to two past the largest that a
	// wire needs by itself; the rest stand in every set, for drop.
	n := 0
	for n < len(sizes) && (sizes[n].AreaMm2 <= highest || n < 2) {
		n++
	}
	n = min(n+2, len(sizes), maxPalette)
	for n > 1 && len(w.s.slots)<<n > maxWithin {
		n--
	}
	for mask := 0; mask < 1<<n; mask++ {
		set := map[*library.WireSize]bool{}
		for k, z := range sizes {
			if k >= n || mask>>k&1 == 1 {
				set[z] = true
			}
		}
		sets = append(sets, set)
	}
	return sets
}

// within chooses from a set of sizes; over is what is lost past the limits, in
// volts over all loads, and more than that when a slot has no size in the set.
func (w *view) within(ok [][]bool, set map[*library.WireSize]bool) (at []int, over float64) {
	at = w.present()
	for i, s := range w.s.slots {
		if s.kind != WireSize {
			continue
		}
		at[i] = -1
		for z, size := range s.sizes {
			if ok[i][z] && set[size] {
				at[i] = z
				break
			}
		}
		if at[i] < 0 {
			return w.present(), math.Inf(1)
		}
	}
	for {
		worst := w.worstDrop(at)
		if worst == nil {
			break
		}
		i, z := w.cheapestVolt(worst, ok, set, at)
		if z < 0 {
			break
		}
		at[i] = z
	}
	w.shrink(ok, set, at)
	return at, w.overV(at)
}

// worstDrop is the load furthest past its limit; nil when none is.
func (w *view) worstDrop(at []int) *drop {
	var worst *drop
	most := 1e-9
	for _, d := range w.drops {
		if o := w.predicted(d, at) - d.limitV; o > most {
			worst, most = d, o
		}
	}
	return worst
}

func (w *view) overV(at []int) float64 {
	sum := 0.0
	for _, d := range w.drops {
		sum += math.Max(0, w.predicted(d, at)-d.limitV)
	}
	return sum
}

// cheapestVolt is the wire on the way of a load whose next size in the set
// saves most volts for its copper.
func (w *view) cheapestVolt(d *drop, ok [][]bool, set map[*library.WireSize]bool, at []int) (slot, z int) {
	best := 0.0
	slot, z = -1, -1
	for k := range d.terms {
		t := &d.terms[k]
		s := w.s.slots[t.slot]
		if s.kind != WireSize {
			continue
		}
		for next := at[t.slot] + 1; next < len(s.sizes); next++ {
			if !ok[t.slot][next] || !set[s.sizes[next]] {
				continue
			}
			saved := t.amps * (w.inState(t, at[t.slot]) - w.inState(t, next))
			more := w.slotG(t.slot, next) - w.slotG(t.slot, at[t.slot])
			if more > 0 && saved/more > best {
				best, slot, z = saved/more, t.slot, next
			}
			break
		}
	}
	return slot, z
}

// slotG is the copper of a slot's wires in a size.
func (w *view) slotG(i, z int) float64 {
	g := 0.0
	for _, x := range w.wires[i] {
		g += copperG(x, w.s.slots[i].sizes[z])
	}
	return g
}

// shrink takes back what no load needs, the most copper first.
func (w *view) shrink(ok [][]bool, set map[*library.WireSize]bool, at []int) {
	for {
		slot, to, most := -1, -1, 0.0
		for i, s := range w.s.slots {
			if s.kind != WireSize {
				continue
			}
			for z := at[i] - 1; z >= 0; z-- {
				if !ok[i][z] || set != nil && !set[s.sizes[z]] {
					continue
				}
				if saves := w.slotG(i, at[i]) - w.slotG(i, z); saves > most && w.spare(i, z, at) {
					slot, to, most = i, z, saves
				}
				break
			}
		}
		if slot < 0 {
			return
		}
		at[slot] = to
	}
}

// spare tells whether a slot can take a size without any load losing more than
// its limit, or more than it loses already.
func (w *view) spare(i, z int, at []int) bool {
	was := at[i]
	defer func() { at[i] = was }()
	for _, d := range w.through[i] {
		at[i] = was
		before := w.predicted(d, at)
		at[i] = z
		if w.predicted(d, at) > math.Max(before, d.limitV)+1e-9 {
			return false
		}
	}
	return true
}

// estimateG is the cost of candidates, fuses left out.
func (w *view) estimateG(at []int) float64 {
	stocks, crimps := map[stock]bool{}, map[*library.Terminal]bool{}
	g := 0.0
	for _, x := range w.v.c.Wires {
		z := x.Spec.Size
		if i := w.slotOf[x.Index]; i >= 0 {
			z = w.s.slots[i].sizes[at[i]]
			g += copperG(x, z)
		}
		stocks[stock{x.Spec.Type, z}] = true
		for _, e := range w.ends(x, z) {
			if e.part != nil {
				crimps[e.part] = true
			}
		}
	}
	return g + distinctSizeG*float64(len(stocks)) + distinctTerminalG*float64(len(crimps))
}

// improve makes single changes as long as one lowers the cost and no load
// loses more: one wire to another size that is in use anyway, or to the smallest
// that it may have.
func (w *view) improve(ok [][]bool, at []int) {
	cost := w.estimateG(at)
	for again, rounds := true, 0; again && rounds < 20; rounds++ {
		again = false
		used := map[*library.WireSize]bool{}
		for i, s := range w.s.slots {
			if s.kind == WireSize {
				used[s.sizes[at[i]]] = true
			}
		}
		for i, s := range w.s.slots {
			if s.kind != WireSize {
				continue
			}
			least := slices.Index(ok[i], true)
			for z := range s.sizes {
				if z == at[i] || !ok[i][z] || z != least && !used[s.sizes[z]] || !w.spare(i, z, at) {
					continue
				}
				was := at[i]
				at[i] = z
				if g := w.estimateG(at); g < cost-1e-9 {
					cost, again = g, true
				} else {
					at[i] = was
				}
			}
		}
	}
}

// guess is the estimated cost of the present choices.
func (w *view) guess() float64 {
	g := w.estimateG(w.present())
	for _, s := range w.s.slots {
		if s.kind == Fuse {
			g += fuseGPerA * s.fuses[s.at].rating.RatingA
		}
	}
	return g
}
