package circuit

import (
	"container/heap"

	"fusewright/harness/design"
)

// routes finds the shortest ways through the runs, each place's once.
type routes struct {
	places map[*design.Place]int
	runs   [][]leg // by place
	trees  map[int][]step
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
	bundle  *Bundle // the last run; nil at the start and where no way leads
	from    int
	reached bool
}

func newRoutes(c *Circuit) *routes {
	r := &routes{places: map[*design.Place]int{}, trees: map[int][]step{}}
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
	tree := r.tree(from)
	end := tree[to]
	if !end.reached {
		return 0, nil, false
	}
	way = make([]*Bundle, end.runs)
	for i, at := end.runs-1, to; at != from; at, i = tree[at].from, i-1 {
		if reversed {
			way[end.runs-1-i] = tree[at].bundle
		} else {
			way[i] = tree[at].bundle
		}
	}
	return end.lengthM, way, true
}

// tree is the shortest ways from a place to all others (Dijkstra 1959).
func (r *routes) tree(start int) []step {
	if t, ok := r.trees[start]; ok {
		return t
	}
	t := make([]step, len(r.runs))
	t[start].reached = true
	done := make([]bool, len(r.runs))
	open := &frontier{{place: start}}
	for open.Len() > 0 {
		at := heap.Pop(open).(reach)
		if done[at.place] {
			continue
		}
		done[at.place] = true
		for _, l := range r.runs[at.place] {
			next := step{lengthM: at.lengthM + l.lengthM, runs: at.runs + 1, bundle: l.bundle,
				from: at.place, reached: true}
			if !done[l.to] && (!t[l.to].reached || next.shorter(t[l.to])) {
				t[l.to] = next
				heap.Push(open, reach{next.lengthM, next.runs, l.to})
			}
		}
	}
	r.trees[start] = t
	return t
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
