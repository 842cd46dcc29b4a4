package solve

import (
	"math"
	"slices"
)

// applyChanges puts changes into the laws. Shorts become branches after the
// circuit's own; one between nodes that no branch joins needs a new order.
func (n *Network) applyChanges(changes []Change) {
	missing := false
	for _, c := range changes {
		if b := c.Branch; b != nil {
			n.changeBranch(b.Index, c)
			continue
		}
		a, z := int32(c.A.Index), int32(c.B.Index)
		slot := n.plan.slotOf(a, z)
		missing = missing || slot == noSlot && a != z
		n.laws = append(n.laws, Law{Kind: Ohmic, Ohm: max(c.Ohm, leastOhm)})
		n.present = append(n.present, true)
		n.forced = append(n.forced, 1)
		n.from = append(slices.Clip(n.from), a)
		n.to = append(slices.Clip(n.to), z)
		n.slot = append(slices.Clip(n.slot), slot)
	}
	if missing {
		n.reorder()
	}
}

func (n *Network) changeBranch(i int, c Change) {
	switch {
	case c.Open:
		n.forced[i] = -1
	case c.Closed:
		n.forced[i] = 1
	default:
		n.laws[i].Ohm = max(c.Ohm, leastOhm)
	}
}

// reorder makes a new order that has places for all shorts: one that had a place by the way in the
// old order may have none in the new.
func (n *Network) reorder() {
	var shorts [][2]int32
	for i := len(n.plan.circuit.Branches); i < len(n.from); i++ {
		if n.from[i] > 0 && n.to[i] > 0 {
			shorts = append(shorts, [2]int32{n.from[i], n.to[i]})
		}
	}
	n.plan = prepare(n.plan.circuit, shorts)
	n.factor = newFactor(n.plan.pattern)
	n.slot = make([]int32, len(n.from))
	for i := range n.slot {
		n.slot[i] = n.plan.slotOf(n.from[i], n.to[i])
	}
}

// Resolve solves the network again with changes, and leaves it as it was. With
// held set, relay contacts stay where they are: the first milliseconds of a
// fault, before a relay can release. Otherwise they settle anew from rest. The
// order is kept, and the start is the changed network at the slopes of the
// operating point, so that a fault costs a few factorisations and no build.
func (n *Network) Resolve(held bool, changes ...Change) *Solution {
	was := n.save()
	defer n.restore(was)
	n.why, n.iterations = "", 0
	if !held {
		n.applyChanges(changes)
		n.settle()
		return n.Solution()
	}
	first, ok := n.Linear(changes...)
	n.applyChanges(changes)
	if !ok || !n.warm(first) {
		n.operate()
		n.tellShare()
	}
	return n.Solution()
}

// warm iterates from given voltages. False = start afresh: it did not end at a
// plain operating point, or a load is folded, which only the unloaded start
// can judge.
func (n *Network) warm(v []float64) bool {
	n.findIslands()
	if len(n.anchors) > 0 && n.driftsAway(v) {
		return false
	}
	copy(n.v, v)
	out := n.newton()
	if !out.converged || out.strained {
		return false
	}
	for _, b := range n.active {
		if law := &n.laws[b]; law.Kind == Power &&
			math.Abs(n.v[n.from[b]]-n.v[n.to[b]]) < law.EdgeV {
			return false
		}
	}
	n.status, n.why, n.at = Converged, "", nil
	return true
}

// driftsAway tells whether an island starts away from zero volts.
func (n *Network) driftsAway(v []float64) bool {
	for i, f := range n.floating {
		if f && v[i] != 0 {
			return true
		}
	}
	return false
}

// saved is what Resolve puts back.
type saved struct {
	n               Network
	laws            []Law
	forced          []int8
	present, closed []bool
	active          []int32
	floating        []bool
	anchors         []int32
	v, v0, d, l     []float64
	converters      []converter
}

func (n *Network) save() saved {
	return saved{n: *n, laws: slices.Clone(n.laws), forced: slices.Clone(n.forced),
		present: slices.Clone(n.present), closed: slices.Clone(n.closed),
		active: slices.Clone(n.active), floating: slices.Clone(n.floating),
		anchors: slices.Clone(n.anchors), v: slices.Clone(n.v), v0: slices.Clone(n.v0),
		converters: slices.Clone(n.converters),
		d:          slices.Clone(n.factor.d), l: slices.Clone(n.factor.l)}
}

func (n *Network) restore(s saved) {
	*n = s.n
	n.laws, n.forced, n.present, n.closed = s.laws, s.forced, s.present, s.closed
	n.active, n.floating, n.anchors, n.v, n.v0 = s.active, s.floating, s.anchors, s.v, s.v0
	n.converters = s.converters
	copy(n.factor.d, s.d)
	copy(n.factor.l, s.l)
}
