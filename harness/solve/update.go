package solve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"fusewright/harness/circuit"
)

// applyChanges puts changes into the laws. Shorts become branches after the
// circuit's own; one between nodes that no branch joins needs a new order.
func (n *Network) applyChanges(changes []Change) {
	var missing [][2]int32
	for _, c := range changes {
		if b := c.Branch; b != nil {
			n.changeBranch(b.Index, c)
			continue
		}
		a, z := int32(c.A.Index), int32(c.B.Index)
		slot := n.plan.slotOf(a, z)
		if slot == noSlot && a != z {
			missing = append(missing, [2]int32{a, z})
		}
		n.laws = append(n.laws, Law{Kind: Ohmic, Ohm: max(c.Ohm, leastOhm)})
		n.present = append(n.present, true)
		n.forced = append(n.forced, 1)
		n.from = append(slices.Clip(n.from), a)
		n.to = append(slices.Clip(n.to), z)
		n.slot = append(slices.Clip(n.slot), slot)
	}
	if len(missing) > 0 {
		n.reorder(missing)
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

// reorder makes a new order that has places for the shorts.
func (n *Network) reorder(missing [][2]int32) {
	n.plan = prepare(n.plan.circuit, missing)
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
}

func (n *Network) save() saved {
	return saved{n: *n, laws: slices.Clone(n.laws), forced: slices.Clone(n.forced),
		present: slices.Clone(n.present), closed: slices.Clone(n.closed),
		active: slices.Clone(n.active), floating: slices.Clone(n.floating),
		anchors: slices.Clone(n.anchors), v: slices.Clone(n.v), v0: slices.Clone(n.v0),
		d: slices.Clone(n.factor.d), l: slices.Clone(n.factor.l)}
}

func (n *Network) restore(s saved) {
	*n = s.n
	n.laws, n.forced, n.present, n.closed = s.laws, s.forced, s.present, s.closed
	n.active, n.floating, n.anchors, n.v, n.v0 = s.active, s.floating, s.anchors, s.v, s.v0
	copy(n.factor.d, s.d)
	copy(n.factor.l, s.l)
}

// edit is a change of conductance between two nodes.
type edit struct {
	a, b    int
	siemens float64
}

// edits lists what changes do to the conductances; false when one of them
// touches a branch that is not a resistance.
func (n *Network) edits(changes []Change) ([]edit, bool) {
	var list []edit
	for _, c := range changes {
		if c.Branch == nil {
			list = append(list, edit{c.A.Index, c.B.Index, 1 / max(c.Ohm, leastOhm)})
			continue
		}
		i := c.Branch.Index
		if n.laws[i].Kind != Ohmic {
			return nil, false
		}
		before, after := 0.0, 1/n.laws[i].Ohm
		if n.conducts(i) {
			before = after
		}
		switch {
		case c.Open:
			after = 0
		case !c.Closed && before == 0:
			continue
		case !c.Closed:
			after = 1 / max(c.Ohm, leastOhm)
		}
		list = append(list, edit{c.Branch.A.Index, c.Branch.B.Index, after - before})
	}
	return list, true
}

// Linear gives the node voltages after changes of resistances with every other
// branch held to its slope at the operating point: one solve for each change on
// the factorisation that is there (Sherman, Morrison, Woodbury). It is exact
// for a network of resistances and sources, and otherwise the first Newton
// step of the fault. False: it cannot tell (an island is cut off or joined, or
// a changed branch is not a resistance); use Resolve.
func (n *Network) Linear(changes ...Change) ([]float64, bool) {
	list, ok := n.edits(changes)
	if !ok || !n.ready() {
		return nil, false
	}
	m := len(list)
	out := slices.Clone(n.v)
	if m == 0 {
		return out, true
	}
	response := make([][]float64, m)
	system, right := mat.NewDense(m, m, nil), mat.NewVecDense(m, nil)
	for k, e := range list {
		if n.floating[e.a] || n.floating[e.b] || e.siemens == 0 {
			return nil, false
		}
		response[k] = n.unit(e.a, e.b)
	}
	for j, e := range list {
		for k := range list {
			system.Set(j, k, response[k][e.a]-response[k][e.b])
		}
		inverse := 1 / e.siemens
		if sum := system.At(j, j) + inverse; math.Abs(sum) < 1e-9*math.Abs(inverse) {
			return nil, false // opening the only path
		}
		system.Set(j, j, system.At(j, j)+inverse)
		right.SetVec(j, n.v[e.a]-n.v[e.b])
	}
	var current mat.VecDense
	if current.SolveVec(system, right) != nil {
		return nil, false
	}
	for k := range list {
		for i := range out {
			out[i] -= response[k][i] * current.AtVec(k)
		}
	}
	return out, true
}

// unit is the response to one ampere pushed into a and drawn from b.
func (n *Network) unit(a, b int) []float64 {
	out := make([]float64, len(n.v))
	n.solveFor(func(node int) float64 {
		switch node {
		case a:
			return 1
		case b:
			return -1
		}
		return 0
	}, out)
	return out
}

// ready makes sure that the factorisation is the one at the operating point.
func (n *Network) ready() bool {
	if !n.factored {
		n.factored = n.status == Converged && n.factorise(n.v, false)
	}
	return n.factored
}

// Thevenin is what a short between two nodes sees: the voltage between them,
// and the resistance of the network there at the slopes of the operating
// point. False when the network has no operating point or a node floats.
// Where loads are not resistances this is a first estimate: Resolve is exact.
func (n *Network) Thevenin(a, b *circuit.Node) (openV, ohm float64, ok bool) {
	if n.floating[a.Index] || n.floating[b.Index] || !n.ready() {
		return 0, 0, false
	}
	response := n.unit(a.Index, b.Index)
	return n.v[a.Index] - n.v[b.Index], response[a.Index] - response[b.Index], true
}
