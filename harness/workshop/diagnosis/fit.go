package diagnosis

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"fusewright/harness/network/solve"
)

// fit is an explanation with how well it agrees with the readings.
type fit struct {
	faults []*fault
	*point
	// chol is of the correlations, with scale the standard deviation of each reading: microamperes
	// and kilohms in one matrix would have no digits left. logDet is of the whole.
	chol   *mat.Cholesky
	scale  []float64
	logDet float64
	rest   []float64 // what was read less what is expected
	chi2   float64
	logP   float64   // logarithm of the evidence, odds included
	sd     []float64 // of the logarithm of each free size
	tried  bool      // by the whole network; false = by its slopes
}

// weigh works out how well a point agrees: its spread is that of the meter and of a sound circuit.
func (m *model) weigh(p *point) *fit {
	n := len(m.sensors)
	m.slope(p)
	f := &fit{faults: p.faults, point: p, chol: &mat.Cholesky{}, rest: make([]float64, n), tried: true}
	c := mat.NewSymDense(n, nil)
	for k := range m.spreads {
		var at []int
		for i := range n {
			if g := p.grad[i][k]; g != 0 {
				p.grad[i][k] = math.Max(-m.bend(i), math.Min(m.bend(i), g))
				at = append(at, i)
			}
		}
		for x, i := range at {
			for _, j := range at[x:] {
				c.SetSym(i, j, c.At(i, j)+p.grad[i][k]*p.grad[j][k])
			}
		}
	}
	for i, s := range m.sensors {
		sd := noise(m.meter, s.gain, p.pred[i])
		if s.state >= 0 && m.soundPred != nil {
			sd = math.Hypot(sd, grossShare*math.Min(math.Abs(p.pred[i]-m.soundPred[i]), math.Abs(p.pred[i])))
		}
		if p.lost(s) { // relays that chatter, a supply that breaks down: a meter shows anything
			sd = math.Hypot(s.y, p.pred[i]) + 1
		}
		c.SetSym(i, i, c.At(i, i)+sd*sd)
		f.rest[i] = s.y - p.pred[i]
	}
	f.scale, f.logDet = make([]float64, n), 0
	for i := range n {
		f.scale[i] = math.Sqrt(c.At(i, i))
		f.logDet += 2 * math.Log(f.scale[i])
	}
	for i := range n {
		for j := range i + 1 {
			c.SetSym(i, j, c.At(i, j)/(f.scale[i]*f.scale[j]))
		}
	}
	if n == 0 || !f.chol.Factorize(c) {
		f.chol, f.logP = nil, math.Inf(-1)
		return f
	}
	f.logDet += f.chol.LogDet()
	f.chi2 = f.product(f.rest, f.rest)
	f.logP = -0.5*f.chi2 - 0.5*f.logDet
	for _, x := range p.faults {
		f.logP += math.Log(x.odds)
	}
	return f
}

// grossShare is how well it is known what a network does with a fault in it, of what the fault does:
// loads far below their volts do not keep to their laws; what is dead is dead. Common practice, no source.
const grossShare = 0.01

// bend is as far as a sensor may move by one standard deviation of a sound circuit before the slope is
// no longer believed: at the edge of a collapse slopes grow without bound.
func (m *model) bend(i int) float64 {
	s := m.sensors[i]
	if s.state >= 0 && s.probe.Amps == nil {
		return 0.1 * m.c.Design.NominalV()
	}
	return 0.5 * math.Max(math.Abs(s.y), 0.2)
}

// lost tells of a sensor in a state that has no operating point.
func (p *point) lost(s *sensor) bool {
	return s.state >= 0 && p.sols[s.state].Status != solve.Converged
}

// product is aᵀC⁻¹b.
func (f *fit) product(a, b []float64) float64 {
	return mat.Dot(mat.NewVecDense(len(a), a), f.solve(b))
}

func (f *fit) solve(b []float64) *mat.VecDense {
	x := mat.NewVecDense(len(b), nil)
	for i, v := range b {
		x.SetVec(i, v/f.scale[i])
	}
	_ = f.chol.SolveVecTo(x, x) // it fails for want of digits alone, and the answer stands
	for i := range b {
		x.SetVec(i, x.AtVec(i)/f.scale[i])
	}
	return x
}

// direction is how the sensors move with the logarithm of a free size at a point.
func (m *model) direction(p *point, f *fault) []float64 {
	d := make([]float64, len(m.sensors))
	for i, s := range m.sensors {
		if s.state < 0 && s.probe.Wire != nil && f.wire != nil && s.probe.Wire != f.wire {
			continue
		}
		x := p.slopes[i][f.branch.Index]
		switch f.kind {
		case loadPower:
		case coilBad:
			x *= f.branch.Ohm * f.size
		default:
			x *= f.size
		}
		d[i] = x
	}
	return d
}

// How the sizes of faults are found: by so many steps of Gauss and Newton at most, none longer than
// mostStep of the logarithm.
const (
	steps    = 8
	mostStep = 1.6
	nearStep = 0.1 // of the standard deviation of the size
)

// refine finds the free sizes of an explanation on the whole network.
func (m *model) refine(sound *fit, faults []*fault) *fit {
	var best *fit
	for range steps {
		f, step := m.at(sound, faults)
		if best == nil || f.logP > best.logP {
			best = f
		}
		if step == nil {
			break
		}
		next, moved := slices.Clone(faults), 0.0
		for i, by := range step {
			if !faults[i].free {
				continue
			}
			least, most := faults[i].limits()
			by = math.Max(-mostStep, math.Min(mostStep, by))
			size := math.Max(least, math.Min(most, faults[i].size*math.Exp(by)))
			moved = math.Max(moved, math.Abs(math.Log(size/faults[i].size))/f.sd[i])
			next[i] = faults[i].sized(size)
		}
		if faults = next; moved < nearStep {
			break
		}
	}
	return best
}

// at weighs an explanation with its sizes, and says by how much of its logarithm each should be another;
// nil = none is free, or it cannot be told.
func (m *model) at(sound *fit, faults []*fault) (f *fit, by []float64) {
	f = m.weigh(m.solved(sound.point, faults...))
	var free []int
	for i, x := range faults {
		if x.free {
			free = append(free, i)
		}
	}
	if len(free) == 0 || math.IsInf(f.logP, -1) {
		return f, nil
	}
	h := mat.NewSymDense(len(free), nil)
	g := mat.NewVecDense(len(free), nil)
	var dirs [][]float64
	for k, i := range free {
		dirs = append(dirs, m.direction(f.point, faults[i]))
		for j := 0; j <= k; j++ {
			h.SetSym(j, k, f.product(dirs[j], dirs[k]))
		}
		g.SetVec(k, f.product(dirs[k], f.rest))
		h.SetSym(k, k, h.At(k, k)+1e-3)
	}
	f.occam(faults, free, h)
	var chol mat.Cholesky
	var step mat.VecDense
	if !chol.Factorize(h) || chol.SolveVecTo(&step, g) != nil {
		return f, nil
	}
	by = make([]float64, len(faults))
	for k, i := range free {
		by[i] = step.AtVec(k)
	}
	return f, by
}

// occam takes off what a free size costs: it could have been any, evenly by its logarithm.
func (f *fit) occam(faults []*fault, free []int, h *mat.SymDense) {
	f.sd = make([]float64, len(faults))
	for k, i := range free {
		least, most := faults[i].limits()
		whole := math.Log(most / least)
		f.sd[i] = math.Min(1/math.Sqrt(h.At(k, k)), whole)
		f.logP += math.Log(math.Min(1, math.Sqrt(2*math.Pi)*f.sd[i]/whole))
	}
}

// best puts the likeliest first; of equals the earlier.
func best(fits []*fit) {
	slices.SortStableFunc(fits, func(a, b *fit) int { return cmp.Compare(b.logP, a.logP) })
}
