package circuit

import (
	"container/heap"

	"fusewright/harness/design"
)

// routes finds the shortest ways through the runs. The search from a place is
// kept and goes on only as far as it is asked for: most wires are short.
type routes struct {
	places   map[*design.Place]int
	runs     [][]leg // by place
	searches map[int]*search
}

// search is Dijkstra's (1959) from one place, stopped at some point.
type search struct {
	steps map[int]step
	done  map[int]bool
	open  frontier
}

// leg is a run seen from one of its places.
type leg struct {
	bundle  *Bundle
	to      int
	lengthM float64
}

// step is how the shortest way from a place reaches another.
type step struct {
	lengthM float64
	runs    int     // number of runs on the way
	bundle  *Bundle // the last run; nil at the start
	from    int
}

func newRoutes(c *Circuit) *routes {
	r := &routes{places: map[*design.Place]int{}, searches: map[int]*search{}}
	for i, p := range c.Design.Places {
		r.places[p] = i
	}
	r.runs = make([][]leg, len(r.places))
	for _, b := range c.Bundles {
		from, ok1 := r.places[b.Run.From]
		to, ok2 := r.places[b.Run.To]
		if !ok1 || !ok2 {
			continue
		}
		m := b.Run.LengthM.Value
		r.runs[from] = append(r.runs[from], leg{b, to, m})
		r.runs[to] = append(r.runs[to], leg{b, from, m})
	}
	return r
}

// between is the shortest way between two places: its length and runs in
// order. Of ways of one length it takes the one with fewer runs, then the one
// whose runs come first in the design; both directions use the same way. ok is
// false when no way leads.
func (r *routes) between(a, b *design.Place) (lengthM float64, way []*Bundle, ok bool) {
	if a == b {
		return 0, nil, a != nil
	}
	from, ok1 := r.places[a]
	to, ok2 := r.places[b]
	if !ok1 || !ok2 {
		return 0, nil, false
	}
	reversed := from > to
	if reversed {
		from, to = to, from
	}
	steps, ok := r.search(from, to)
	if !ok {
		return 0, nil, false
	}
	end := steps[to]
	way = make([]*Bundle, end.runs)
	for i, at := end.runs-1, to; at != from; at, i = steps[at].from, i-1 {
		if reversed {
			way[end.runs-1-i] = steps[at].bundle
		} else {
			way[i] = steps[at].bundle
		}
	}
	return end.lengthM, way, true
}

// search goes on from a place until the way to another is settled; ok is false
// when no way leads there.
func (r *routes) search(start, to int) (steps map[int]step, ok bool) {
	s := r.searches[start]
	if s == nil {
		s = &search{map[int]step{start: {}}, map[int]bool{}, frontier{{place: start}}}
		r.searches[start] = s
	}
	for len(s.open) > 0 && !s.done[to] {
		at := heap.Pop(&s.open).(reach)
		if s.done[at.place] {
			continue
		}
		s.done[at.place] = true
		for _, l := range r.runs[at.place] {
			next := step{at.lengthM + l.lengthM, at.runs + 1, l.bundle, at.place}
			old, seen := s.steps[l.to]
			if !s.done[l.to] && (!seen || next.shorter(old)) {
				s.steps[l.to] = next
				heap.Push(&s.open, reach{next.lengthM, next.runs, l.to})
			}
		}
	}
	return s.steps, s.done[to]
}

// tieM is within which two ways count as equally long: far below a millimetre,
// above what adding lengths in another order can change.
const tieM = 1e-9

func (s step) shorter(than step) bool {
	if d := s.lengthM - than.lengthM; d < -tieM || d > tieM {
		return d < 0
	}
	return s.runs < than.runs
}

// reach is a place to go on from; frontier is the heap of them.
type reach struct {
	lengthM float64
	runs    int
	place   int
}

type frontier []reach

func (f frontier) Len() int      { return len(f) }
func (f frontier) Swap(i, j int) { f[i], f[j] = f[j], f[i] }
func (f frontier) Less(i, j int) bool {
	a, b := f[i], f[j]
	switch {
	case a.lengthM != b.lengthM:
		return a.lengthM < b.lengthM
	case a.runs != b.runs:
		return a.runs < b.runs
	}
	return a.place < b.place
}

// Push adds a place; for container/heap.
func (f *frontier) Push(x any) { *f = append(*f, x.(reach)) }

// Pop takes the last place; for container/heap.
func (f *frontier) Pop() any {
	old := *f
	x := old[len(old)-1]
	*f = old[:len(old)-1]
	return x
}
