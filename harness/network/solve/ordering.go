package solve

import (
	"container/heap"
	"slices"
)

// pattern is the symbolic part of a factorisation: the order in which nodes are
// eliminated and which conductances that creates. It depends on which nodes
// have branches between them and not on any value.
//
// Row k holds the neighbours of the k-th node at the time of its elimination;
// all of them come later.
type pattern struct {
	pos      []int32 // place in the order, by matrix node
	rowStart []int32 // len n+1, into col
	col      []int32 // places, ascending within a row
	fillTo   []int32 // where each pair of a row's neighbours adds its conductance
}

// newPattern orders n nodes by minimum degree: always eliminate a node with the
// fewest neighbours left. On a tree this makes no fill at all; a harness is a
// tree with a few loops. Ties go to the node whose degree changed last, then
// to the lower index, so that the order is steady.
//
// Taken from its end, a chain would give a node as many ancestors as the chain
// is long. So a node that has waited for whole storeys of others counts as having
// two neighbours more than storeys, at least, and comes after those that have
// waited for less: a long chain or ladder comes apart into stretches, then into
// stretches of stretches (rake and compress: Miller, Reif 1985), at the price of
// a neighbour or two. A node has a few storeys of ancestors whatever the length.
func newPattern(n int, pairs [][2]int32) *pattern {
	g := newEliminationGraph(n, pairs)
	p := &pattern{pos: make([]int32, n), rowStart: make([]int32, n+1)}
	rows := make([][]int32, n)
	for k := range n {
		node := g.next()
		p.pos[node] = int32(k)
		rows[k] = g.eliminate(node)
	}
	total := 0
	for _, row := range rows {
		total += len(row)
	}
	p.col = make([]int32, 0, total)
	for k, row := range rows {
		for _, node := range row {
			p.col = append(p.col, p.pos[node])
		}
		slices.Sort(p.col[p.rowStart[k]:])
		p.rowStart[k+1] = int32(len(p.col))
	}
	p.findFill()
	return p
}

// findFill notes for each pair of neighbours of each row the slot that their
// new conductance adds to.
func (p *pattern) findFill() {
	for k := range p.pos {
		row := p.col[p.rowStart[k]:p.rowStart[k+1]]
		for i, a := range row {
			for _, b := range row[i+1:] {
				p.fillTo = append(p.fillTo, p.slot(a, b))
			}
		}
	}
}

// slot finds the conductance between two places; -1 when there is none.
func (p *pattern) slot(a, b int32) int32 {
	if a > b {
		a, b = b, a
	}
	start := p.rowStart[a]
	i, found := slices.BinarySearch(p.col[start:p.rowStart[a+1]], b)
	if !found {
		return -1
	}
	return start + int32(i)
}

// eliminationGraph is the network during elimination. Lists of neighbours may
// hold nodes that are gone; degrees count only those left.
type eliminationGraph struct {
	near   [][]int32
	degree []int32
	level  []int32 // nodes in a row that each waited for
	gone   []bool
	known  map[uint64]struct{} // pairs with an edge; never iterated
	queue  rankQueue           // stale entries are skipped
	turn   int32
}

func newEliminationGraph(n int, pairs [][2]int32) *eliminationGraph {
	g := &eliminationGraph{
		near: make([][]int32, n), degree: make([]int32, n), level: make([]int32, n), gone: make([]bool, n),
		known: make(map[uint64]struct{}, 2*len(pairs)),
	}
	for _, p := range pairs {
		g.join(p[0], p[1])
	}
	for i := n - 1; i >= 0; i-- {
		g.queue = append(g.queue, g.rank(int32(i)))
	}
	heap.Init(&g.queue)
	return g
}

// storey is how many nodes in a row are eliminated before others get their turn.
const storey = 64

// rank is when a node should go, and which node it is.
type rank struct{ degree, storey, turn, node int32 }

func (g *eliminationGraph) rank(node int32) rank {
	g.turn++
	r := rank{g.degree[node], g.level[node] / storey, g.turn, node}
	if r.storey > 0 {
		r.degree = max(r.degree, 2+r.storey)
	}
	return r
}

// join adds an edge and tells whether it is new.
func (g *eliminationGraph) join(a, b int32) bool {
	if a > b {
		a, b = b, a
	}
	key := uint64(a)<<32 | uint64(b)
	if _, ok := g.known[key]; ok || a == b {
		return false
	}
	g.known[key] = struct{}{}
	g.near[a], g.near[b] = append(g.near[a], b), append(g.near[b], a)
	g.degree[a]++
	g.degree[b]++
	return true
}

// next takes the node that should go next.
func (g *eliminationGraph) next() int32 {
	for {
		r := heap.Pop(&g.queue).(rank)
		if now := g.rank(r.node); !g.gone[r.node] && r.degree == now.degree && r.storey == now.storey {
			return r.node
		}
	}
}

// eliminate removes a node, joins its neighbours to each other and returns them.
func (g *eliminationGraph) eliminate(node int32) []int32 {
	g.gone[node] = true
	row := g.near[node][:0]
	for _, other := range g.near[node] {
		if !g.gone[other] {
			row = append(row, other)
			g.degree[other]--
		}
	}
	for i, a := range row {
		for _, b := range row[i+1:] {
			g.join(a, b)
		}
	}
	for _, other := range row {
		g.level[other] = max(g.level[other], g.level[node]+1)
		heap.Push(&g.queue, g.rank(other))
	}
	return row
}

// rankQueue is a heap of ranks.
type rankQueue []rank

func (q rankQueue) Len() int      { return len(q) }
func (q rankQueue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q rankQueue) Less(i, j int) bool {
	a, b := q[i], q[j]
	switch {
	case a.degree != b.degree:
		return a.degree < b.degree
	case a.storey != b.storey:
		return a.storey < b.storey
	}
	return a.turn > b.turn
}

// Push adds a rank, for package heap.
func (q *rankQueue) Push(x any) { *q = append(*q, x.(rank)) }

// Pop takes the last rank, for package heap.
func (q *rankQueue) Pop() any {
	old := *q
	r := old[len(old)-1]
	*q = old[:len(old)-1]
	return r
}
