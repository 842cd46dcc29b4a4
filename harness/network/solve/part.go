package solve

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
)

// part is the network of a region with the rest of the circuit folded into it.
// Node k+1 of it is the k-th node of the region in the order of elimination.
type part struct {
	net      *Network
	nodes    []int32           // of the circuit, in the order of elimination
	branches []*circuit.Branch // of the circuit, ascending; the network's first ones
	border   []bool            // by place: joined to the rest
	place    []int32           // by node of the circuit; holds for nodes of the region
	listed   []int32           // by branch of the circuit: round in which it is one of branches
	at       []int32           // by branch of the circuit: where
}

// has tells whether a branch is one of the part's.
func (s *part) has(l *Local, b int) bool { return s.listed[b] == l.region.round }

// take sets the part up for a region, with a branch open.
func (s *part) take(l *Local, open *circuit.Branch) {
	if s.place == nil {
		s.place = make([]int32, len(l.group))
		s.listed, s.at = make([]int32, len(l.amps)), make([]int32, len(l.amps))
	}
	pos := l.n.plan.pattern.pos
	s.nodes = append(s.nodes[:0], l.region.nodes...)
	slices.SortFunc(s.nodes, func(a, b int32) int { return int(pos[a-1] - pos[b-1]) })
	for k, node := range s.nodes {
		s.place[node] = int32(k)
	}
	s.collect(l)
	n := s.network(l)
	s.contacts(l, n)
	n.forced[s.at[open.Index]] = -1
	s.fold(l, n)
	s.net = n
}

// collect lists the branches within the region and finds its border.
func (s *part) collect(l *Local) {
	s.branches, s.border = s.branches[:0], s.border[:0]
	for _, node := range s.nodes {
		border := false
		for _, b := range l.n.plan.circuit.Nodes[node].Branches {
			i := b.Index
			other := l.n.from[i] + l.n.to[i] - node
			switch {
			case other != 0 && l.region.in[other] != l.region.round:
				border = border || l.n.conducts(i)
			case s.listed[i] != l.region.round:
				s.listed[i] = l.region.round
				s.branches = append(s.branches, b)
			}
		}
		s.border = append(s.border, border)
	}
	slices.SortFunc(s.branches, func(a, b *circuit.Branch) int { return a.Index - b.Index })
	for k, b := range s.branches {
		s.at[b.Index] = int32(k)
	}
}

// network makes the network of the listed branches, in the circuit's order of
// elimination.
func (s *part) network(l *Local) *Network {
	count, nodes := len(s.branches), len(s.nodes)+1
	c := &circuit.Circuit{Design: l.n.plan.circuit.Design,
		Nodes: make([]*circuit.Node, nodes), Branches: make([]*circuit.Branch, count)}
	own := make([]circuit.Node, nodes)
	for k := range own {
		own[k].Index = k
		c.Nodes[k] = &own[k]
	}
	plan := &Plan{circuit: c, pattern: s.pattern(l), from: make([]int32, count), to: make([]int32, count),
		slot: make([]int32, count)}
	n := &Network{plan: plan, situation: l.n.situation, opt: l.n.opt, limitA: l.n.limitA,
		laws: make([]Law, count), present: make([]bool, count), forced: make([]int8, count),
		closed: make([]bool, count), from: plan.from, to: plan.to, slot: plan.slot,
		floating: make([]bool, nodes), group: make([]int32, nodes),
		v: make([]float64, nodes), v0: make([]float64, nodes),
		factor: newFactor(plan.pattern), work: newWorkspace(nodes)}
	copies := make([]circuit.Branch, count)
	for k, b := range s.branches {
		i := b.Index
		plan.from[k], plan.to[k] = s.node(l.n.from[i]), s.node(l.n.to[i])
		plan.slot[k] = plan.slotOf(plan.from[k], plan.to[k])
		copies[k] = *b
		copies[k].A, copies[k].B = c.Nodes[plan.from[k]], c.Nodes[plan.to[k]]
		c.Branches[k] = &copies[k]
		n.laws[k], n.present[k], n.forced[k], n.closed[k] = l.n.laws[i], l.n.present[i], l.n.forced[i], l.n.closed[i]
	}
	return n
}

// node is a node of the circuit in the part.
func (s *part) node(of int32) int32 {
	if of == 0 {
		return 0
	}
	return s.place[of] + 1
}

// pattern is the circuit's for the nodes of the region: with each node its
// ancestors are there, and so whole rows.
func (s *part) pattern(l *Local) *pattern {
	whole := l.n.plan.pattern
	p := &pattern{pos: make([]int32, len(s.nodes)), rowStart: make([]int32, len(s.nodes)+1)}
	for k, node := range s.nodes {
		p.pos[k] = int32(k)
		row := whole.pos[node-1]
		for t := whole.rowStart[row]; t < whole.rowStart[row+1]; t++ {
			p.col = append(p.col, s.place[l.nodeAt[whole.col[t]]])
		}
		p.rowStart[k+1] = int32(len(p.col))
	}
	p.findFill()
	return p
}

// contacts gives the part the coils whose contacts may move; the others stay as
// they are.
func (s *part) contacts(l *Local, n *Network) {
	n.coils = []coil{}
	local := func(of []int) []int {
		out := make([]int, len(of))
		for i, b := range of {
			out[i] = int(s.at[b])
		}
		return out
	}
	for i, k := range l.n.coils {
		if l.region.moves(int32(i)) {
			n.coils = append(n.coils, coil{branch: n.plan.circuit.Branches[s.at[k.branch.Index]],
				make: local(k.make), rest: local(k.rest), pullV: k.pullV, dropV: k.dropV, closedA: k.closedA})
		}
	}
}

// fold adds what the rest of the circuit is to the part: a conductance between
// each two nodes of the border, and one from each to the reference with the
// current that it draws now. Conductances are those at the elimination of each
// node less what the part itself puts there.
func (s *part) fold(l *Local, n *Network) {
	p, a, excess := n.plan.pattern, n.factor.a, n.factor.excess
	l.remainder(s, p, a, excess)
	drawn := n.work.step
	clear(drawn)
	for k, b := range s.branches {
		i := b.Index
		n.factor.subtract(n.slot[k], l.siemens[i])
		drawn[n.from[k]] -= l.amps[i]
		drawn[n.to[k]] += l.amps[i]
	}
	for _, node := range l.n.anchors {
		if l.region.in[node] == l.region.round {
			excess[s.place[node]] -= 1
		}
	}
	v := func(k int32) float64 { return l.n.v[s.nodes[k]] }
	for k := range int32(len(s.nodes)) {
		if !s.border[k] {
			continue
		}
		n.join(k+1, 0, toGround-k, Law{Kind: folded, Ohm: 1 / excess[k], EMFV: v(k), LimitA: drawn[k+1]})
		for t := p.rowStart[k]; t < p.rowStart[k+1]; t++ {
			if other := p.col[t]; s.border[other] && a[t] != 0 {
				n.join(k+1, other+1, t, Law{Kind: folded, Ohm: 1 / a[t], EMFV: v(k) - v(other)})
			}
		}
	}
}

// remainder puts into a and excess the conductances of the part's nodes before
// any of them is eliminated, by taking back what their elimination adds.
func (l *Local) remainder(s *part, p *pattern, a, excess []float64) {
	whole := l.n.plan.pattern
	for k, node := range s.nodes {
		row := whole.pos[node-1]
		copy(a[p.rowStart[k]:p.rowStart[k+1]], l.a[whole.rowStart[row]:whole.rowStart[row+1]])
		excess[k] = l.excess[row]
	}
	fill := 0
	for k, node := range s.nodes {
		row := whole.pos[node-1]
		start, end := whole.rowStart[row], whole.rowStart[row+1]
		for t := start; t < end; t++ {
			share := l.n.factor.l[t]
			excess[p.col[p.rowStart[k]+t-start]] -= share * l.excess[row]
			for u := t + 1; u < end; u++ {
				a[p.fillTo[fill]] -= share * l.a[u]
				fill++
			}
		}
	}
}

// subtract takes a branch's conductance out again.
func (f *factor) subtract(slot int32, siemens float64) {
	switch {
	case slot >= 0:
		f.a[slot] -= siemens
	case slot <= toGround:
		f.excess[toGround-slot] -= siemens
	}
}

// join adds a branch after the circuit's own.
func (n *Network) join(from, to, slot int32, law Law) {
	n.laws = append(n.laws, law)
	n.present, n.forced = append(n.present, true), append(n.forced, 1)
	n.from, n.to, n.slot = append(n.from, from), append(n.to, to), append(n.slot, slot)
}

// moved is the most that a node of the border has moved from its voltage before.
func (s *part) moved(v []float64) float64 {
	most := 0.0
	for k, node := range s.nodes {
		if s.border[k] && s.net.floating[k+1] {
			return math.Inf(1)
		}
		if s.border[k] {
			most = max(most, math.Abs(s.net.v[k+1]-v[node]))
		}
	}
	return most
}
