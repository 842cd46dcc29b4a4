package solve

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
)

const (
	maxIterations = 120
	// settledV ends the iteration when the balanced network moves no more.
	settledV = 1e-7
)

// outcome is how an iteration ended.
type outcome struct {
	converged bool
	unstable  bool // the matrix was not positive definite at the end
	strained  bool // ... or somewhere on the way
}

// maxShut ends the search for diodes that block without load: each round may shut some.
const maxShut = 8

// shutOhm is that of a diode that blocks, at the start: nothing behind it is to have the
// voltage of its leak.
const shutOhm = 1e12

// start is startBy with every diode open, then with those shut that are found to block.
func (n *Network) start() {
	n.shut = n.shut[:0]
	for range maxShut {
		n.startBy()
		before := len(n.shut)
		for _, b := range n.active {
			if n.laws[b].Kind == Valve && !slices.Contains(n.shut, b) && (n.v[n.from[b]]-n.v[n.to[b]])*n.laws[b].EMFV < 0 {
				n.shut = append(n.shut, b)
			}
		}
		if len(n.shut) == before {
			return
		}
	}
}

// startBy sets the voltages to those without load: sources and what is Drawn alone, each load at
// most a millionth of its conductance so that nodes between loads have a
// voltage. From there Newton goes down to the upper operating point of
// constant-power loads, the one that switching on leads to.
func (n *Network) startBy() {
	n.factor.clear()
	inject := n.work.step
	clear(inject)
	for _, d := range n.opt.Drawn {
		inject[d.Node.Index] -= d.Amps
	}
	for _, b := range n.active {
		law := &n.laws[b]
		g, emf := 1/law.Ohm, 0.0
		switch law.Kind {
		case Ohmic:
			if n.isLoad(b) {
				g = min(1e-6*g, 1e-6)
			}
		case Store:
			emf = law.EMFV
			if n.limitA > 0 && emf > 0 && law.ChargeOhm < outputLeakOhm { // one that refuses charge still gives
				g = 1 / law.ChargeOhm
			}
		case Charger:
			emf = law.EMFV
		case Sparing:
			g = 0
		case folded:
			emf = law.EMFV
			inject[n.from[b]] -= law.LimitA
			inject[n.to[b]] += law.LimitA
		case Valve:
			if slices.Contains(n.shut, b) {
				g = 1 / shutOhm
			}
		case Lamp, Torque, Fan:
			g = min(1e-6*law.CurrentA/law.EdgeV, 1e-6)
		case Power:
			g = min(1e-6*law.PowerW/(law.EdgeV*law.EdgeV), 1e-6)
		}
		n.stamp(b, g)
		inject[n.from[b]] += g * emf
		inject[n.to[b]] -= g * emf
	}
	if !n.finishFactor(false) {
		clear(n.v)
		copy(n.v0, n.v)
		return
	}
	n.solveFor(func(node int) float64 { return inject[node] }, n.v)
	copy(n.v0, n.v)
}

func (n *Network) isLoad(b int32) bool {
	branches := n.plan.circuit.Branches
	return int(b) < len(branches) && branches[b].Kind == circuit.LoadBranch
}

// newton iterates from n.v until currents balance.
//
// The network is the slope of a co-content function whose local minima are the
// stable operating points. Where its second derivative is positive definite the
// step is Newton's. Elsewhere constant-power loads count as constant-current
// ones for one step, which still goes down. A line search on the slope along
// the step keeps each step from overshooting.
func (n *Network) newton() outcome {
	var out outcome
	n.residuals(n.v)
	for range maxIterations {
		n.iterations++
		out.unstable = !n.factorise(n.v, false)
		if out.unstable {
			out.strained = true
			n.factorise(n.v, true)
		}
		r, d := n.work.residual, n.work.step
		n.solveFor(func(node int) float64 { return -r[node] }, d)
		if n.balanced() && largest(d) <= settledV*(1+largest(n.v)) {
			n.takeStep(1)
			if !n.balanced() { // it passed the knee of a law, a battery at rest among them: on with the other slope
				continue
			}
			n.factored = !out.unstable
			out.converged = true
			return out
		}
		n.search(out.unstable)
	}
	return out
}

// search takes as much of the step as brings the slope along it down. In the
// unstable region (grow) it lengthens the step while the way still falls, so
// that a collapse is passed quickly.
func (n *Network) search(grow bool) {
	slope := dot(n.work.residual, n.work.step)
	if !grow && largest(n.work.step) < 1e-6 { // rounding decides the slope
		n.takeStep(1)
		return
	}
	low, high, t := 0.0, math.Inf(1), 1.0
	base := append(n.work.trial[:0], n.v...)
	for range 40 {
		for i, d := range n.work.step {
			n.v[i] = base[i] + t*d
		}
		n.residuals(n.v)
		now := dot(n.work.residual, n.work.step)
		switch {
		case !(now <= 0.5*math.Abs(slope)):
			high = t
		case grow && now < 0.5*slope && t < 64:
			low = t
		default:
			return
		}
		if math.IsInf(high, 1) {
			t *= 2
		} else {
			t = (low + high) / 2
		}
	}
}

// takeStep moves along the step without a search.
func (n *Network) takeStep(t float64) {
	for i, d := range n.work.step {
		n.v[i] += t * d
	}
	n.residuals(n.v)
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}

// largest is the greatest magnitude; NaN counts as infinite.
func largest(a []float64) float64 {
	most := 0.0
	for _, x := range a {
		if !(math.Abs(x) <= most) {
			most = math.Abs(x)
			if math.IsNaN(most) {
				return math.Inf(1)
			}
		}
	}
	return most
}
