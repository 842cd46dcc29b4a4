package solve

import (
	"slices"

	"fusewright/harness/network/circuit"
)

// region is the nodes of a part that is solved on its own. With each node come
// its ancestors in the order of elimination, so that what is left out has been
// eliminated before it, and the whole of an island without voltage.
type region struct {
	l      *Local
	round  int32
	in     []int32 // by node: round in which it is one of nodes
	spread []int32 // by node: round in which its conductor was followed from it
	cut    []int32 // by branch: round in which it may open or close
	moved  []int32 // by coil: round in which its contacts may move
	nodes  []int32
	stack  []int32
	whole  bool // the part would be the whole circuit
}

func newRegion(l *Local) region {
	c := l.n.plan.circuit
	return region{l: l, in: make([]int32, len(c.Nodes)), spread: make([]int32, len(c.Nodes)),
		cut: make([]int32, len(c.Branches)), moved: make([]int32, len(l.n.coils))}
}

// grow finds the part that opening a branch can change much; false = it may be
// all, since battery negative or the positive post can still be reached from
// its end by a conductor.
func (r *region) grow(b *circuit.Branch) bool {
	r.round++
	r.nodes, r.whole = r.nodes[:0], false
	r.cut[b.Index] = r.round
	if plus := r.l.n.plan.circuit.Positive(); plus != nil {
		r.add(int32(plus.Index))
	}
	r.add(int32(b.B.Index))
	r.follow(int32(b.A.Index))
	return !r.whole
}

func (r *region) moves(coil int32) bool { return r.moved[coil] == r.round }

// add takes a node in.
func (r *region) add(node int32) {
	p, n := r.l.n.plan.pattern, r.l.n
	for node > 0 && r.in[node] != r.round {
		r.in[node] = r.round
		r.nodes = append(r.nodes, node)
		if n.floating[node] {
			for _, b := range n.plan.circuit.Nodes[node].Branches {
				if n.conducts(b.Index) {
					r.add(int32(b.A.Index))
					r.add(int32(b.B.Index))
				}
			}
		}
		k := p.pos[node-1]
		if p.rowStart[k] == p.rowStart[k+1] {
			return
		}
		node = r.l.nodeAt[p.col[p.rowStart[k]]]
	}
}

// follow takes in the conductor that a node is on once what moves is open, and
// what hangs on it.
func (r *region) follow(node int32) {
	mark := func(node int32) {
		if r.spread[node] != r.round {
			r.spread[node] = r.round
			r.stack = append(r.stack, node)
		}
	}
	n := r.l.n
	plus := n.plan.circuit.Positive()
	base := len(r.stack)
	for mark(node); len(r.stack) > base && !r.whole; {
		at := r.stack[len(r.stack)-1]
		r.stack = r.stack[:len(r.stack)-1]
		if at == 0 || plus != nil && int(at) == plus.Index {
			r.whole = true
			break
		}
		r.add(at)
		for _, b := range n.plan.circuit.Nodes[at].Branches {
			other := n.from[b.Index] + n.to[b.Index] - at
			switch {
			case !n.conducts(b.Index) || r.cut[b.Index] == r.round:
			case b.Conductor():
				mark(other)
			case b.Kind == circuit.BatteryBranch && at == n.to[b.Index]:
				r.whole = true // a battery hangs on it
			default:
				r.add(other)
				if g := r.l.group[other]; g != r.l.group[0] && (plus == nil || g != r.l.group[plus.Index]) {
					mark(other)
				}
				if k := r.l.coilAt[b.Index]; k >= 0 {
					r.move(k)
				}
			}
		}
	}
	r.stack = r.stack[:base]
}

// move takes in what the contacts of a coil switch.
func (r *region) move(coil int32) {
	if r.moves(coil) {
		return
	}
	r.moved[coil] = r.round
	k := &r.l.n.coils[coil]
	contacts := slices.Concat(k.make, k.rest)
	for _, b := range contacts {
		r.cut[b] = r.round
	}
	for _, b := range contacts {
		r.add(r.l.n.from[b])
		if to := r.l.n.to[b]; r.spread[to] != r.round {
			r.follow(to)
		}
	}
}
