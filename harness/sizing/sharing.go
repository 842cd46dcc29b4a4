package sizing

import (
	"container/heap"
	"math"
)

// sharing is a choice of wires in the making, with what each load loses by it.
type sharing struct {
	w     *view
	sizes [][]int // by slot: candidates in the set of sizes, ascending; nil = no wire
	at    []int   // by slot
	lostV []float64
}

// A load that the thickest wires leave past its limit by more than hopelessShare gets them, so that a longer
// way never has a thinner wire, and the finding stays for the builder to mend otherwise. Where contacts, fuses and
// the battery alone take more than the limit, its wires go by the other rules.
const hopelessShare = 0.02

// aim sets what every load may lose.
func (w *view) aim(ok [][]int) {
	w.s.beyond = map[string]bool{}
	thick := w.thickest()
	for i, list := range ok {
		if list != nil {
			thick[i] = min(thick[i], list[len(list)-1])
		}
	}
	for _, d := range w.drops {
		d.aimV = d.limitV
		least := w.predicted(d, thick)
		switch {
		case least <= d.limitV*(1+hopelessShare):
		case d.limitV <= 0 || least-w.copperV(d, thick) >= d.limitV:
			d.aimV = math.Inf(1)
			w.s.beyond[d.load.Load.Load.Name] = d.lowest || w.s.beyond[d.load.Load.Load.Name]
		default:
			d.aimV = least
		}
	}
}

// thickest is the present choice with the largest size of every wire that its
// ends take.
func (w *view) thickest() []int {
	at := w.present()
	for i, s := range w.s.slots {
		if s.kind != WireSize {
			continue
		}
		at[i] = len(s.sizes) - 1
		for at[i] > 0 && !w.crimpsAll(i, at[i]) {
			at[i]--
		}
	}
	return at
}

// take gives a slot another size.
func (s *sharing) take(i, z int) {
	for _, u := range s.w.through[i] {
		s.lostV[u.drop] += u.term.amps * (s.w.inState(u.term, z) - s.w.inState(u.term, s.at[i]))
	}
	s.at[i] = z
}

// worstDrop is the load furthest past what to aim at; nil when none is.
func (s *sharing) worstDrop() *drop {
	var worst *drop
	most := 1e-9
	for k, d := range s.w.drops {
		if over := s.lostV[k] - d.aimV; over > most {
			worst, most = d, over
		}
	}
	return worst
}

// overV is what is lost past the aims, in volts over all loads.
func (s *sharing) overV() float64 {
	sum := 0.0
	for k, d := range s.w.drops {
		sum += math.Max(0, s.lostV[k]-d.aimV)
	}
	return sum
}

// next is the candidate of a slot after the present one, or before it (by -1);
// -1 when there is none.
func (s *sharing) next(i, by int) int {
	list := s.sizes[i]
	for k, z := range list {
		if z == s.at[i] && k+by >= 0 && k+by < len(list) {
			return list[k+by]
		}
	}
	return -1
}

// cheapestVolt is the wire on the way of a load whose next size in the set
// saves most volts for its copper.
func (s *sharing) cheapestVolt(d *drop) (slot, z int) {
	best := 0.0
	slot, z = -1, -1
	for _, t := range d.terms {
		next := s.next(t.slot, 1)
		if next < 0 {
			continue
		}
		saved := t.amps * (s.w.inState(t, s.at[t.slot]) - s.w.inState(t, next))
		more := s.w.slotG(t.slot, next) - s.w.slotG(t.slot, s.at[t.slot])
		if more > 0 && saved/more > best {
			best, slot, z = saved/more, t.slot, next
		}
	}
	return slot, z
}

// spare tells whether a slot can take a size without any load losing more than
// its aim, or more than it loses already.
func (s *sharing) spare(i, z int) bool {
	uses := s.w.through[i]
	for k, u := range uses {
		d := u.drop
		if k > 0 && uses[k-1].drop == d {
			continue // its terms stand together, and the first counts them all
		}
		after := s.lostV[d]
		for _, v := range uses[k:] {
			if v.drop == d {
				after += v.term.amps * (s.w.inState(v.term, z) - s.w.inState(v.term, s.at[i]))
			}
		}
		if after > math.Max(s.lostV[d], s.w.drops[d].aimV)+1e-9 {
			return false
		}
	}
	return true
}

// shrink takes back what no load needs, the most copper first. What can not
// shrink now can not later: the loads lose more with every step.
func (s *sharing) shrink() {
	q := &saving{}
	offer := func(i int) {
		if z := s.next(i, -1); z >= 0 {
			if g := s.w.slotG(i, s.at[i]) - s.w.slotG(i, z); g > 0 {
				heap.Push(q, saved{i, z, g})
			}
		}
	}
	for i := range s.sizes {
		offer(i)
	}
	for q.Len() > 0 {
		if x := heap.Pop(q).(saved); s.spare(x.slot, x.z) {
			s.take(x.slot, x.z)
			offer(x.slot)
		}
	}
}

// saved is the copper that a slot would save with a size.
type saved struct {
	slot, z int
	g       float64
}

// saving is a heap of them, the most first, of equal ones the earlier slot.
type saving []saved

func (q saving) Len() int { return len(q) }
func (q saving) Less(i, j int) bool {
	if q[i].g != q[j].g {
		return q[i].g > q[j].g
	}
	return q[i].slot < q[j].slot
}
func (q saving) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *saving) Push(x any)   { *q = append(*q, x.(saved)) }
func (q *saving) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}
