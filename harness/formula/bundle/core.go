package bundle

import (
	"math"

	"fusewright/harness/formula/conductor"
)

// acrossWPerMK is the conductivity across a bundle of insulated wires with the
// air between them. Fitted to the aircraft 100 % curve (MIL-W-5088L figure);
// a mixture of wires and air (Maxwell) gives 0.13 to 0.17 for vehicle wire, and
// the currents change by a tenth when it is taken three times as high.
const acrossWPerMK = 0.13

// fill is the part of the cylinder's section that the wires take up: the stretched
// line round hexagonal bundles of 3 to 37 wires has that length within 5 %.
const fill = 0.75

// core is a group of strands taken as a cylinder with evenly spread heat: the
// n strands with the most heat per section.
type core struct {
	n         int
	lossW20   float64 // all of it at 20 °C, each wire's own warming included
	areaMm2   float64 // sum of the squares of the outer diameters
	largestMm float64

	surfaceC, mediumC, lossW float64 // the answer; +Inf where copper melts
}

// add takes one more strand in at a factor x on the square of the currents.
func (c *core) add(s strand, x float64) {
	c.n++
	c.lossW20 += s.heat(x)
	c.areaMm2 += s.outerMm * s.outerMm
	c.largestMm = max(c.largestMm, s.outerMm)
}

// heat is the loss of a strand as if at 20 °C, such that heat·ρ(M) is its loss
// in a medium at M although its conductor is hotter than that by its own drop:
// q = a·ρ(M + q·T1), ρ(T) = 1 + α(T − 20). +Inf where it runs away.
func (s strand) heat(x float64) float64 {
	a := s.lossW20 * x
	if left := 1 - a*s.t1*conductor.CopperAlphaPerK; left > 0 {
		return a / left
	}
	return math.Inf(1)
}

// count is how many wires of the largest size fill the section: 1 for one wire,
// and hardly more for one with a few thin ones beside it.
func (c *core) count() float64 { return c.areaMm2 / (c.largestMm * c.largestMm) }

// outerMm is the diameter of the cylinder: the wire itself for one, filled to
// fill from two equal wires on, on a straight line between.
func (c *core) outerMm() float64 {
	m := c.count()
	if m >= 2 {
		return c.largestMm * math.Sqrt(m/fill)
	}
	return c.largestMm * (1 + (m-1)*(math.Sqrt(2/fill)-1))
}

// innerKmPerW is the resistance from the hottest place to the surface per watt
// of the whole: 1/4πk for evenly spread heat, without the part that a wire makes
// itself and gives off through its own insulation. None for one wire.
func (c *core) innerKmPerW() float64 {
	return (1 - 1/c.count()) / (4 * math.Pi * acrossWPerMK)
}

func ratio(celsius float64) float64 { return conductor.AtTemperature(1, celsius) }

// surface is the heat balance of the cylinder's outside: the one of a wire as
// thick as the bundle.
func (b *Bundle) surface(c *core) *conductor.Balance { return b.surfaceOf(c, b.emissivity) }

func (b *Bundle) surfaceOf(c *core, emissivity float64) *conductor.Balance {
	d := c.outerMm()
	return conductor.NewBalance(conductor.Insulated{AreaMm2: 1, OhmPerM20: 1, ConductorMm: d, OuterMm: d,
		Emissivity: emissivity}, conductor.StillAir{AmbientC: b.place.AmbientC})
}

// hottest is the core whose medium is the hottest at a factor x on the square of
// all currents: what is cooler than its neighbours counts only as far as its heat
// makes them hotter than they were without it.
func (b *Bundle) hottest(x float64) core {
	return b.hotter(b.core(len(b.strands), x), 1, x)
}

// hotter is the hottest core of so many strands or more, where it is hotter than the best.
func (b *Bundle) hotter(best core, fewest int, x float64) core {
	var c core
	for _, s := range b.strands {
		c.add(s, x)
		if c.n >= fewest && b.mayBeHotter(&c, &best) {
			b.settle(&c)
			if c.mediumC > best.mediumC {
				best = c
			}
		}
	}
	return best
}

// core is that of the first n strands.
func (b *Bundle) core(n int, x float64) core {
	c := core{surfaceC: b.place.AmbientC, mediumC: b.place.AmbientC}
	for _, s := range b.strands[:n] {
		c.add(s, x)
	}
	if n > 0 {
		b.settle(&c)
	}
	return c
}

// mayBeHotter tells whether a core makes more heat than it gives off with its
// medium as hot as the best one's. The first look needs no convection: a cylinder
// gives off no less than a thinner one, and no less by its circumference than a
// thicker one.
func (b *Bundle) mayBeHotter(c, best *core) bool {
	if math.IsInf(best.mediumC, 1) {
		return false
	}
	q := c.lossW20 * ratio(best.mediumC)
	inner := c.innerKmPerW() + b.place.CoverKmPerW
	if q*inner <= best.lossW*(best.innerKmPerW()+b.place.CoverKmPerW) &&
		q <= best.lossW*min(1, c.outerMm()/best.outerMm()) {
		return false
	}
	return b.surface(c).SurfaceLossWPerM(best.mediumC-q*inner) < q
}

// traceK is a rise in kelvin that is as good as none, and can still be told from the
// ambient with fifteen digits.
const traceK = 1e-6

// settle finds the core's surface temperature, at which it gives off what it
// makes: W(Ts) = E·ρ(Ts), E = C/(1 − C·α·R) with the resistance R from the hottest
// place to the surface. Every wire is taken to be in that hottest place. The loss
// is close to a power of the rise, so the search is a secant on log-log axes.
func (b *Bundle) settle(c *core) {
	c.surfaceC, c.mediumC, c.lossW = math.Inf(1), math.Inf(1), math.Inf(1)
	inner := c.innerKmPerW() + b.place.CoverKmPerW
	left := 1 - c.lossW20*conductor.CopperAlphaPerK*inner
	if !(left > 0) {
		return
	}
	at20, out := c.lossW20/left, b.surface(c)
	rise := at20 * ratio(b.place.AmbientC) / (c.outerMm() * 0.05) // some 16 W/m²K
	top := conductor.CopperMeltsC - b.place.AmbientC
	slope, before, was := 1.2, 0.0, 0.0
	for range 60 {
		rise = min(rise, top)
		surface := b.place.AmbientC + rise
		over := math.Log(out.SurfaceLossWPerM(surface) / (at20 * ratio(surface)))
		if rise == top && over < 0 {
			return
		}
		if math.Abs(over) < 1e-9 || !(rise > traceK) {
			break
		}
		log := math.Log(rise)
		if before != 0 && log != was {
			slope = min(4, max(0.25, (over-before)/(log-was)))
		}
		before, was = over, log
		rise = math.Exp(log - over/slope)
	}
	surface := b.place.AmbientC + rise
	loss := at20 * ratio(surface)
	if medium := surface + loss*inner; medium <= conductor.CopperMeltsC {
		c.surfaceC, c.mediumC, c.lossW = surface, medium, loss
	}
}
