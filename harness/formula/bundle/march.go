package bundle

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"fusewright/harness/formula/conductor"
)

// settle takes the peaks of the cycle that brings its start back to itself: Newton's
// method from the mean, with the effect of each node on the end of the cycle found
// by trying.
func (n *network) settle(peak *Peak, mean Peak, cy Cycle) {
	x := mean
	for range 8 {
		p := coldest
		y := n.cycle(x, cy, &p)
		off := y.minus(x)
		if y.melts() || max(math.Abs(off[0]), math.Abs(off[1]), math.Abs(off[2])) < 1e-5 {
			peak.take(p)
			return
		}
		back := mat.NewDense(3, 3, nil)
		for k := range 3 {
			var by [3]float64
			by[k] = 1
			moved := n.cycle(x.plus(by, 1), cy, &Peak{}).minus(y)
			for l := range 3 {
				back.Set(l, k, by[l]-moved[l])
			}
		}
		var move mat.VecDense
		if move.SolveVec(back, mat.NewVecDense(3, off[:])) != nil {
			break
		}
		x = x.plus([3]float64(move.RawVector().Data), 1)
	}
	n.cycle(x, cy, peak)
}

func (p Peak) minus(q Peak) [3]float64 {
	return [3]float64{p.ConductorC - q.ConductorC, p.InsulationC - q.InsulationC, p.BundleC - q.BundleC}
}

// cycle is one on-time and the rest after it.
func (n *network) cycle(x Peak, cy Cycle, p *Peak) Peak {
	n.turn(true)
	x = n.run(x, cy.OnS, p)
	n.turn(false)
	return n.run(x, cy.EveryS-cy.OnS, p)
}

// run goes on for a time in growing steps: the first are short against the time
// in which the conductor and its insulation come together, the last a twentieth of
// the whole. Where heating feeds on itself they stay short.
func (n *network) run(x Peak, seconds float64, p *Peak) Peak {
	p.take(x)
	dt := max(seconds*1e-7, min(seconds*1e-4, n.heat[0]*n.half/2))
	for t := 0.0; t < seconds; dt = min(dt*1.15, seconds/20) {
		if n.runsAway {
			dt = max(seconds*1e-4, min(dt, 0.3*n.doublingS()))
		}
		dt = min(dt, seconds-t)
		x = n.step(x, dt)
		t += dt
		if x.melts() {
			x = every(math.Inf(1))
			p.take(x)
			return x
		}
		p.take(x)
	}
	return x
}

// melts also catches what is no number.
func (p Peak) melts() bool {
	return !(p.ConductorC <= conductor.CopperMeltsC && p.BundleC <= conductor.CopperMeltsC)
}

// doublingS is the shortest time in which heating that feeds on itself grows by e.
func (n *network) doublingS() float64 {
	return 1 / (conductor.CopperAlphaPerK * max(n.lossW20/n.heat[0], n.othersW20/n.heat[2], 1e-12))
}

// reach is the time in which everything on brings the conductor to a limit.
func (n *network) reach(x Peak, limitC float64) float64 {
	n.turn(true)
	limitC = min(limitC, conductor.CopperMeltsC)
	dt := math.Inf(1)
	for k, w := range []float64{n.lossW20, 0, n.othersW20} {
		if w > 0 {
			dt = min(dt, (limitC-x.ConductorC)*n.heat[k]/w/200)
		}
	}
	t := 0.0
	for steps := 0; steps < 5000 && t < ages; steps++ {
		if n.runsAway {
			dt = min(dt, 0.3*n.doublingS())
		}
		y := n.step(x, dt)
		if !(y.ConductorC < limitC) || y.melts() {
			return t + dt*min(1, max(0, (limitC-x.ConductorC)/(y.ConductorC-x.ConductorC)))
		}
		x, t, dt = y, t+dt, dt*1.03
	}
	if n.runsAway { // all but there
		return t
	}
	return math.Inf(1)
}
