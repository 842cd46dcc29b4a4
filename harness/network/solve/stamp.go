package solve

import "math"

// workspace is the memory of one iteration, by node unless said otherwise.
type workspace struct {
	residual  []float64 // amperes that leave each node and should not
	tolerance []float64 // amperes that may
	step      []float64 // volts
	trial     []float64 // volts
	rhs       []float64 // by place in the order
}

func newWorkspace(nodes int) workspace {
	return workspace{residual: make([]float64, nodes), tolerance: make([]float64, nodes),
		step: make([]float64, nodes), trial: make([]float64, nodes),
		rhs: make([]float64, max(nodes-1, 0))}
}

// Tolerances of the current sum at each node: absolute, relative to the
// currents that meet there, and for the rounding of voltages across milliohms.
const (
	residualA     = 1e-9
	residualShare = 1e-10
	roundOff      = 1e-15
)

// residuals sums the currents at each node at voltages v.
func (n *Network) residuals(v []float64) {
	r, tol := n.work.residual, n.work.tolerance
	for i := range r {
		r[i], tol[i] = 0, residualA
	}
	for _, d := range n.opt.Drawn {
		r[d.Node.Index] += d.Amps
		tol[d.Node.Index] += residualShare * math.Abs(d.Amps)
	}
	for _, b := range n.active {
		from, to, law := n.from[b], n.to[b], &n.laws[b]
		va, vb := v[from], v[to]
		amps, siemens := law.At(va - vb)
		r[from] += amps
		r[to] -= amps
		allowed := residualShare*math.Abs(amps) +
			roundOff*math.Abs(siemens)*(math.Abs(va)+math.Abs(vb))
		tol[from] += allowed
		tol[to] += allowed
	}
}

// balanced tells whether the last residuals are all within tolerance.
func (n *Network) balanced() bool {
	for i := 1; i < len(n.work.residual); i++ {
		if !(math.Abs(n.work.residual[i]) <= n.work.tolerance[i]) {
			return false
		}
	}
	return true
}

// factorise stamps the slopes of all laws at v and factorises. With convex set,
// slopes below zero (constant power) count as zero: the matrix is then positive
// definite whatever the voltages. It tells whether the matrix was.
func (n *Network) factorise(v []float64, convex bool) bool {
	n.factor.clear()
	for _, b := range n.active {
		_, g := n.laws[b].At(v[n.from[b]] - v[n.to[b]])
		if convex && g < 0 {
			continue
		}
		n.stamp(b, g)
	}
	return n.finishFactor(convex)
}

// finishFactor ties down what has no conductance and factorises.
func (n *Network) finishFactor(convex bool) bool {
	for _, node := range n.anchors {
		n.factor.excess[n.plan.pattern.pos[node-1]] += 1
	}
	if convex {
		// Loads of constant current hold no voltage; a trace of conductance at
		// each node does, and changes the step alone, not the solution.
		for k := range n.factor.excess {
			n.factor.excess[k] += 1e-12
		}
	}
	return n.factor.run() < 0
}

// stamp adds a conductance in the place of a branch.
func (n *Network) stamp(b int32, siemens float64) {
	switch s := n.slot[b]; {
	case s >= 0:
		n.factor.a[s] += siemens
	case s <= toGround:
		n.factor.excess[toGround-s] += siemens
	}
}

// solveFor puts the voltages that the currents (by node) cause into out.
func (n *Network) solveFor(current func(node int) float64, out []float64) {
	pos, rhs := n.plan.pattern.pos, n.work.rhs
	for node := 1; node < len(out); node++ {
		rhs[pos[node-1]] = current(node)
	}
	n.factor.solve(rhs)
	out[0] = 0
	for node := 1; node < len(out); node++ {
		out[node] = rhs[pos[node-1]]
	}
}
