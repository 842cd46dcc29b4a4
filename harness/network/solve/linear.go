package solve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"fusewright/harness/network/circuit"
)

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
	if !n.factored && n.status == Converged { // of a network that is shared nothing is written twice
		n.factored = n.factorise(n.v, false)
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
