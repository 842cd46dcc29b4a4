package solve

import "slices"

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
	gone   []bool
	known  map[uint64]struct{} // pairs with an edge; never iterated
	queue  [][]int32           // by degree, last in first out; stale entries are skipped
	low    int
}

func newEliminationGraph(n int, pairs [][2]int32) *eliminationGraph {
	g := &eliminationGraph{
		near: make([][]int32, n), degree: make([]int32, n), gone: make([]bool, n),
		known: make(map[uint64]struct{}, 2*len(pairs)), queue: make([][]int32, n+1),
	}
	for _, p := range pairs {
		g.join(p[0], p[1])
	}
	for i := n - 1; i >= 0; i-- {
		g.enqueue(int32(i))
	}
	return g
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

func (g *eliminationGraph) enqueue(node int32) {
	d := int(g.degree[node])
	g.queue[d] = append(g.queue[d], node)
	g.low = min(g.low, d)
}

// next takes a node of least degree.
func (g *eliminationGraph) next() int32 {
	for {
		q := g.queue[g.low]
		if len(q) == 0 {
			g.low++
			continue
		}
		node := q[len(q)-1]
		g.queue[g.low] = q[:len(q)-1]
		if !g.gone[node] && int(g.degree[node]) == g.low {
			return node
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
		g.enqueue(other)
	}
	return row
}
