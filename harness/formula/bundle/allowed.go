package bundle

import (
	"math"

	"fusewright/harness/formula/conductor"
)

// AloneA is what a wire may carry by itself in the place, with its conductor at
// its limit: the heat balance of package conductor.
func (b *Bundle) AloneA(i int) float64 { return b.aloneA(i, b.wires[i].LimitC) }

func (b *Bundle) aloneA(i int, toC float64) float64 {
	w := b.wires[i]
	a := conductor.NewBalance(w.Insulated, conductor.StillAir{AmbientC: b.place.AmbientC}).CurrentA(toC)
	a *= b.place.Share
	if b.place.CoverKmPerW > 0 { // which that balance does not know
		a = largest(a, func(x float64) float64 { return b.excessW([]int{i}, b.alone(i), i, toC, x, w.Emissivity) })
	}
	return a
}

// AllowedA is the current that wire i may carry for good, in amperes, with its
// conductor at its limit and the others at theirs. Never more than AloneA;
// 0 when the others alone bring it to its limit.
func (b *Bundle) AllowedA(i int) float64 { return b.grownA(i, b.wires[i].LimitC, b.alone(i)) }

// Factor is what the others leave wire i of AloneA, 0 to 1; 0 when that is nothing.
func (b *Bundle) Factor(i int) float64 {
	if alone := b.AloneA(i); alone > 0 {
		return b.AllowedA(i) / alone
	}
	return 0
}

// overC is how far a wire's conductor is above its limit.
func (b *Bundle) overC(i int) float64 {
	return b.strand(i).conductorC(b.full().mediumC, 1) - b.wires[i].LimitC
}

// CommonFactor is the factor on all currents together at which the first wire
// that carries current comes to its limit; below 1 the bundle is overloaded.
// +Inf when no wire carries current. The limit of a wire without current does
// not count: Steady tells how hot it gets.
func (b *Bundle) CommonFactor() float64 {
	if len(b.strands) == 0 {
		return math.Inf(1)
	}
	first := b.strands[0].wire
	f := b.AloneA(first) / math.Abs(b.wires[first].CurrentA)
	// One core after another; most often the first is the one that limits.
	n := b.hottest(1).n
	for range b.strands {
		f = largest(f, func(f float64) float64 { return b.mostOverC(b.core(n, f*f), f*f) })
		c := b.hottest(f * f)
		if b.mostOverC(c, f*f) <= nearly {
			break
		}
		n = c.n
	}
	return f
}

// mostOverC is how far the first of the wires is above its limit with a core.
func (b *Bundle) mostOverC(c core, x float64) float64 {
	over := math.Inf(-1)
	for _, s := range b.strands {
		over = max(over, s.conductorC(c.mediumC, x)-b.wires[s.wire].LimitC)
	}
	return over
}

// nearly is a rise in kelvin or a heat in W/m that makes no difference.
const nearly = 1e-6

// largest is the largest x up to high for which over(x), rising with x, is not
// above zero: false position on x² with the Illinois step, and bisection where
// over has no number or that is slow. It errs to the low side.
func largest(high float64, over func(float64) float64) float64 {
	top := over(high)
	if top <= nearly {
		return high
	}
	lo, hi, flo, fhi := 0.0, high*high, over(0), top
	if flo >= 0 {
		return 0
	}
	for i, side := 0, 0; i < 100 && hi-lo > 1e-7*hi; i++ {
		x := lo + (hi-lo)*flo/(flo-fhi)
		if i%4 == 3 || !(x > lo && x < hi) {
			x = (lo + hi) / 2
		}
		switch f := over(math.Sqrt(x)); {
		case f <= 0:
			if lo, flo = x, f; f > -nearly {
				return math.Sqrt(lo)
			}
			if side < 0 {
				fhi /= 2
			}
			side = -1
		default:
			hi, fhi = x, f
			if side > 0 {
				flo /= 2
			}
			side = 1
		}
	}
	return math.Sqrt(lo)
}
