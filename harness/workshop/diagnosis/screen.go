package diagnosis

import (
	"cmp"
	"math"
	"runtime"
	"slices"
	"sync"

	"gonum.org/v1/gonum/mat"

	"fusewright/harness/network/solve"
)

// grid are how many sizes of a fault are tried by slopes.
const grid = 14

// screen weighs every suspect on top of an explanation, by slopes where they tell: an added
// resistance is worked out in whole, since the network seen from its branch is a source with its own
// resistance (Thévenin), and loads stand at their slopes. What breaks or joins is solved.
func (m *model) screen(base *fit, suspects []*fault) []*fit {
	inverse := base.solveAll(len(m.sensors))
	weighted := base.solve(base.rest)
	behind := m.behind(base.point)
	var out []*fit
	var apart []*fault
	for _, f := range suspects {
		if slices.ContainsFunc(base.faults, func(x *fault) bool { return x.element() == f.element() }) {
			continue
		}
		if !f.free && f.kind != thinnerWire {
			apart = append(apart, f)
		} else if g := m.bySlopes(base, f, inverse, weighted, behind); g != nil {
			out = append(out, g)
		}
	}
	if len(base.faults) > 0 {
		apart = m.promising(base, apart, inverse)
	}
	for k, rest := range m.again(base, apart) {
		if len(base.faults) == 0 {
			m.alone[apart[k].number] = rest
		}
		if g := m.whole(base, apart[k], rest, inverse); g != nil {
			out = append(out, g)
		}
	}
	return out
}

// promising are those of some faults that break or join which may explain most of what a base leaves. What
// they do beside it is taken to be what they do alone, added to what the base does; or of the two the one of
// which what was read leaves less, as of two breaks in one way.
func (m *model) promising(base *fit, faults []*fault, inverse *mat.SymDense) []*fault {
	left := map[*fault]float64{}
	sum, least := make([]float64, len(m.sensors)), make([]float64, len(m.sensors))
	for _, f := range faults {
		for i, alone := range m.alone[f.number] {
			sum[i] = base.rest[i] + alone - (m.sensors[i].y - m.soundPred[i])
			least[i] = sum[i]
			for _, x := range []float64{alone, base.rest[i]} {
				if math.Abs(x) < math.Abs(least[i]) {
					least[i] = x
				}
			}
		}
		left[f] = math.Min(quadratic(sum, inverse), quadratic(least, inverse)) - 2*math.Log(f.odds)
	}
	list := slices.Clone(faults)
	slices.SortStableFunc(list, func(a, b *fault) int { return cmp.Compare(left[a], left[b]) })
	return list[:min(promised, len(list))]
}

// quadratic is aᵀMa.
func quadratic(a []float64, of *mat.SymDense) float64 {
	v := mat.NewVecDense(len(a), a)
	return mat.Inner(v, of, v)
}

// solveAll is C⁻¹.
func (f *fit) solveAll(n int) *mat.SymDense {
	inverse := mat.NewSymDense(n, nil)
	_ = f.chol.InverseTo(inverse) // see solve
	for i := range n {
		for j := range i + 1 {
			inverse.SetSym(i, j, inverse.At(i, j)/(f.scale[i]*f.scale[j]))
		}
	}
	return inverse
}

// gain is by how much −χ²/2 grows when the expectation moves by d.
func gainOf(d []float64, at []int, inverse *mat.SymDense, weighted *mat.VecDense) float64 {
	sum := 0.0
	for _, i := range at {
		x := weighted.AtVec(i) * d[i]
		for _, j := range at {
			x -= 0.5 * d[i] * inverse.At(i, j) * d[j]
		}
		sum += x
	}
	return sum
}

// bySlopes weighs a fault by the slopes of the base, over its sizes.
func (m *model) bySlopes(base *fit, f *fault, inverse *mat.SymDense, weighted *mat.VecDense, behind [][]float64) *fit {
	var at []int
	for i := range m.sensors {
		if base.slopes[i][f.branch.Index] != 0 {
			at = append(at, i)
		}
	}
	if len(at) == 0 {
		return nil
	}
	sizes := []float64{f.size}
	switch {
	case f.free:
		least, most := f.limits()
		sizes = make([]float64, grid)
		for k := range sizes {
			sizes[k] = least * math.Pow(most/least, float64(k)/(grid-1))
		}
	}
	d := make([]float64, len(m.sensors))
	logs := make([]float64, len(sizes))
	top := 0
	for k, size := range sizes {
		for _, i := range at {
			d[i] = m.shift(base, f, i, size, behind)
		}
		logs[k] = gainOf(d, at, inverse, weighted)
		if logs[k] > logs[top] {
			top = k
		}
	}
	sum := 0.0
	for _, x := range logs {
		sum += math.Exp(x - logs[top])
	}
	g := &fit{faults: append(slices.Clone(base.faults), f.sized(sizes[top])), chi2: base.chi2 - 2*logs[top]}
	g.logP = base.logP + math.Log(f.odds) + logs[top] + math.Log(sum/float64(len(sizes)))
	return g
}

// shift is how far a sensor moves by a fault of a size.
func (m *model) shift(base *fit, f *fault, i int, size float64, behind [][]float64) float64 {
	s := m.sensors[i]
	slope := base.slopes[i][f.branch.Index]
	switch {
	case f.kind == loadPower:
		return slope * (size - 1)
	case f.kind == coilBad:
		size = f.branch.Ohm * (size - 1)
	}
	if s.state < 0 {
		if s.probe.Wire != nil && f.wire != nil && s.probe.Wire != f.wire {
			return 0
		}
		return math.Min(slope*size, s.most()-base.pred[i])
	}
	of := behind[s.state][f.branch.Index]
	return slope * size / (1 + size/of)
}

// behind is, by state and branch, the resistance of a branch with all that lies behind it.
func (m *model) behind(p *point) [][]float64 {
	if p.behind != nil {
		return p.behind
	}
	p.behind = make([][]float64, len(m.states))
	for k, n := range p.nets {
		p.behind[k] = make([]float64, len(m.c.Branches))
		r := n.Responder()
		for _, b := range m.c.Branches {
			p.behind[k][b.Index] = math.Inf(1)
			law, ok := n.Law(b)
			if r == nil || !ok || law.Kind != solve.Ohmic || b.Load != nil || p.sols[k].BranchA[b.Index] == 0 {
				continue
			}
			if !r.Draw(solve.Draw{Node: b.A, Amps: 1}, solve.Draw{Node: b.B, Amps: -1}) {
				continue
			}
			across := r.At(b.B) - r.At(b.A)
			if k1 := (1 - across/law.Ohm) / law.Ohm; k1 > 0 {
				p.behind[k][b.Index] = 1 / k1
			}
		}
	}
	return p.behind
}

// again is, for each of some faults that break or join, what was read less what is then expected,
// by solving the networks that are there again.
func (m *model) again(base *fit, faults []*fault) [][]float64 {
	rest := make([][]float64, len(faults))
	changes := make([][]solve.Change, len(faults))
	for k, f := range faults {
		rest[k] = slices.Clone(base.rest)
		changes[k] = change(solve.Options{}, []*fault{f}, asDesigned).Changes
		all := append(slices.Clone(base.faults), f)
		for i, s := range m.sensors {
			if s.state < 0 {
				rest[k][i] = s.y - m.predict(s, &point{faults: all})
			}
		}
	}
	var wait sync.WaitGroup
	limit := make(chan struct{}, runtime.GOMAXPROCS(0))
	for at, n := range base.nets {
		wait.Go(func() {
			limit <- struct{}{}
			defer func() { <-limit }()
			for k, f := range faults {
				if f.inert(base.sols[at]) {
					continue
				}
				sol := n.Resolve(false, changes[k]...)
				for i, s := range m.sensors {
					if s.state != at {
						continue
					}
					if rest[k][i] = 0; sol.Status == solve.Converged {
						rest[k][i] = s.y - s.seen(sol)
					}
				}
			}
		})
	}
	wait.Wait()
	return rest
}

// whole weighs a fault by what it leaves, with the spread of the base.
func (m *model) whole(base *fit, f *fault, rest []float64, inverse *mat.SymDense) *fit {
	if slices.Equal(rest, base.rest) {
		return nil // nothing that was read can tell of it
	}
	chi2 := quadratic(rest, inverse)
	return &fit{faults: append(slices.Clone(base.faults), f), chi2: chi2, logP: base.logP + 0.5*(base.chi2-chi2) + math.Log(f.odds)}
}

// misread weighs that one reading is wrong: it then says nothing, and might have been anything on its scale.
func (m *model) misread(base *fit) (out []*fit) {
	inverse := base.solveAll(len(m.sensors))
	weighted := base.solve(base.rest)
	odds := m.odds(wrongReading)
	for i, s := range m.sensors {
		a, w := inverse.At(i, i), weighted.AtVec(i)
		if !(a > 0) {
			continue
		}
		scale := math.Max(2*math.Max(math.Abs(s.y), math.Abs(base.pred[i])), math.Sqrt(2*math.Pi/a)) // no less than what a right one spreads over
		f := &fault{kind: wrongReading, reading: i, odds: odds}
		g := &fit{faults: append(slices.Clone(base.faults), f), point: base.point, chol: base.chol, scale: base.scale, logDet: base.logDet, rest: base.rest,
			chi2: base.chi2 - w*w/a, tried: true}
		g.logP = base.logP + 0.5*w*w/a + math.Log(odds) + 0.5*math.Log(2*math.Pi/a) - math.Log(scale)
		out = append(out, g)
	}
	slices.SortStableFunc(out, func(a, b *fit) int { return cmp.Compare(b.logP, a.logP) })
	return out
}
