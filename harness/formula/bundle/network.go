package bundle

import (
	"math"
	"slices"

	"fusewright/harness/formula/conductor"
)

// network is one wire in its bundle as three heat capacities on a line, per metre:
//
//	Cc·dTc/dt = I²·R(Tc) − (Tc − Ti)/r
//	Ci·dTi/dt = (Tc − Ti)/r − (Ti − M)/r
//	Cb·dTb/dt = (Ti − M)/r + P·ρ(M) − W(Tb),   M = Tb + W·R/2
//
// Tc is the conductor, Ti the middle of its insulation, Tb the mean of the
// bundle: the outer half of that insulation and all other wires that count,
// which make P. r is half of T1, M the hottest place, R the resistance from it to
// the surface; the surface itself has no capacity. In the steady state all of it
// is the steady state of the core.
type network struct {
	wire               source // the wire
	others             []source
	lossW20, othersW20 float64 // of both, as they flow now
	half               float64 // K·m/W
	inner              float64 // R above
	joined             float64 // 1, or 0 for a wire that is no part of the core
	heat               [3]float64
	runsAway           bool // there is no steady state with everything on
	*outflow
}

// network takes wire i among the members of a core.
func (b *Bundle) network(i int, g group) *network {
	w := b.wires[i]
	n := &network{half: max(1e-6, ownKmPerW(w)/2), outflow: b.outflow(g.core)}
	n.inner, n.runsAway = g.innerKmPerW(), math.IsInf(g.mediumC, 1)
	const least = 1e-4 // J/(m·K); keeps the equations apart
	plastic := max(least, plasticCapacity(w)/2)
	n.heat = [3]float64{copperCapacity(w), plastic, plastic}
	for _, s := range b.strands {
		if s.wire == i {
			n.wire = source{s.lossW20, w.Pulsed}
			n.runsAway = n.runsAway || math.IsInf(s.conductorC(g.mediumC, 1), 1)
		}
		switch in := slices.Contains(g.members, s.wire); {
		case in && s.wire == i:
			n.joined = 1
		case in:
			n.others = append(n.others, source{s.lossW20, b.wires[s.wire].Pulsed})
			if !math.IsInf(g.mediumC, 1) { // where there is a steady state, that one
				n.others[len(n.others)-1].lossW20 = s.heat(1)
			}
			n.heat[2] += copperCapacity(b.wires[s.wire]) + plasticCapacity(b.wires[s.wire])
		}
	}
	// A share of the current stands for resistance to the outside, not for heat:
	// the strands carry 1/Share², so the capacities do too.
	for k := range n.heat {
		n.heat[k] /= b.place.Share * b.place.Share
	}
	return n
}

// from is a steady state, with the hottest place in place of the mean, as this
// core has it: with its mean so that its hottest place is as hot.
func (n *network) from(x Peak) Peak {
	if x.melts() {
		return x
	}
	i := 1
	for i < outKnots-1 && n.hottest(i) < x.BundleC {
		i++
	}
	p, q := n.knots[i-1], n.knots[i]
	part := (x.BundleC - n.hottest(i-1)) / (n.hottest(i) - n.hottest(i-1))
	x.BundleC = p.c + part*(q.c-p.c)
	return x
}

// hottest is the hottest place with the mean at a knot.
func (n *network) hottest(knot int) float64 {
	return n.knots[knot].c + n.knots[knot].w*n.inner/2
}

// copperCapacity and plasticCapacity are in J/(m·K).
func copperCapacity(w Wire) float64 { return 1000 * conductor.CopperHeatJPerMm3K * w.AreaMm2 }

func plasticCapacity(w Wire) float64 {
	return 1000 * w.InsulationJPerMm3K * math.Pi / 4 * (w.OuterMm*w.OuterMm - w.ConductorMm*w.ConductorMm)
}

// turn sets what flows from now on: everything, or only what is not pulsed.
func (n *network) turn(on bool) {
	n.lossW20, n.othersW20 = n.wire.when(on), 0
	for _, s := range n.others {
		n.othersW20 += s.when(on)
	}
}

// source is the heat of a wire at 20 °C in W/m.
type source struct {
	lossW20 float64
	pulsed  bool
}

func (s source) when(on bool) float64 {
	if s.pulsed && !on {
		return 0
	}
	return s.lossW20
}

// slopes are the time derivatives and, for the step, their Jacobian: row k holds
// the derivatives by the node before, itself and the node after.
func (n *network) slopes(x Peak) (f [3]float64, jac [3][3]float64) {
	w, dw := n.at(x.BundleC)
	m, dm := x.BundleC+w*n.inner/2, 1+dw*n.inner/2
	g, alpha := 1/n.half, conductor.CopperAlphaPerK
	in, through := (x.ConductorC-x.InsulationC)*g, (x.InsulationC-m)*g
	f = [3]float64{n.lossW20*ratio(x.ConductorC) - in, in - through,
		n.joined*through + n.othersW20*ratio(m) - w}
	jac = [3][3]float64{{0, n.lossW20*alpha - g, g}, {g, -2 * g, g * dm},
		{n.joined * g, -n.joined*g*dm + n.othersW20*alpha*dm - dw, 0}}
	for k := range f {
		f[k] /= n.heat[k]
		for l := range jac[k] {
			jac[k][l] /= n.heat[k]
		}
	}
	return f, jac
}

// step goes on by dt with the two-stage Rosenbrock method ROS2, second order and
// L-stable, γ = 1 − 1/√2. Source: Verwer, Spee, Blom, Hundsdorfer, SIAM J. Sci.
// Comput. 20 (1999) 1456 (from memory).
func (n *network) step(x Peak, dt float64) Peak {
	const gamma = 1 - math.Sqrt2/2
	f, jac := n.slopes(x)
	for k := range jac {
		for l := range jac[k] {
			jac[k][l] *= -gamma * dt
		}
		jac[k][1]++
	}
	k1 := solve(jac, f)
	f, _ = n.slopes(x.plus(k1, dt))
	for k := range f {
		f[k] -= 2 * k1[k]
	}
	return x.plus(k1, 1.5*dt).plus(solve(jac, f), 0.5*dt)
}

func (x Peak) plus(k [3]float64, by float64) Peak {
	return Peak{x.ConductorC + by*k[0], x.InsulationC + by*k[1], x.BundleC + by*k[2]}
}

// solve solves three equations on a line of neighbours.
func solve(a [3][3]float64, f [3]float64) [3]float64 {
	for k := 1; k < 3; k++ {
		q := a[k][0] / a[k-1][1]
		a[k][1] -= q * a[k-1][2]
		f[k] -= q * f[k-1]
	}
	f[2] /= a[2][1]
	f[1] = (f[1] - a[1][2]*f[2]) / a[1][1]
	f[0] = (f[0] - a[0][2]*f[1]) / a[0][1]
	return f
}

// outflow is the heat a core gives off by its mean temperature, laid down at
// knots and taken straight between them; they lie closest near the ambient.
type outflow struct {
	knots [outKnots]struct{ c, w float64 }
	last  int // where the last one was found
}

const outKnots = 48

// outflow goes well beyond the core's steady state; from there on the straight
// line is below the truth.
func (b *Bundle) outflow(c core) *outflow {
	o, out := &outflow{}, b.surface(&c)
	inner := b.place.CoverKmPerW + c.innerKmPerW()/2
	top := min(max(20, 2*(c.surfaceC-b.place.AmbientC)), conductor.CopperMeltsC-b.place.AmbientC)
	for i := range o.knots {
		part := float64(i) / (outKnots - 1)
		ts := b.place.AmbientC + top*part*part
		w := out.SurfaceLossWPerM(ts)
		o.knots[i].c, o.knots[i].w = ts+w*inner, w
	}
	return o
}

// at is the heat in W/m and its slope; beyond the knots the outer lines go on.
func (o *outflow) at(c float64) (w, slope float64) {
	i := o.last
	for i > 0 && c < o.knots[i].c {
		i--
	}
	for i < outKnots-2 && c > o.knots[i+1].c {
		i++
	}
	o.last = i
	p, q := o.knots[i], o.knots[i+1]
	slope = (q.w - p.w) / (q.c - p.c)
	return p.w + slope*(c-p.c), slope
}
