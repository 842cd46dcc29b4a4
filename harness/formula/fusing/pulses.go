package fusing

import "math"

// Pulses is a current that flows for a time, again and again.
type Pulses struct {
	OnA, OffA   float64 // while on, and between
	OnS, EveryS float64
}

// Edge is one of the curves of a device's band.
type Edge int

// The edges: the soonest that one of its kind opens, and the middle of the band on a
// logarithmic scale.
const (
	Fastest Edge = iota
	Usual
)

// Tripping is when a device opens under pulses.
type Tripping struct {
	Cycle  int     // counted from 1; 0 = in none
	AfterS float64 // from the start of that cycle
}

// Pulsed tells in which cycle a device opens by one edge of its band. The element is
// a first-order memory of heat that opens at the square of the current which it just
// carries:
//
//	dx/dt = ((I/I0)² − x)/τ,  opens at x = 1,  τ = t(I)/ln(X/(X − 1)),  X = (I/I0)²
//
// with t(I) the published opening from cold at the current while on, so that one long
// pulse opens as the curve has it. Before the first it has carried OffA for long.
// Source: one exponential for repeated loads (from memory); its memory cools as it
// warms: common practice, no source.
func (d Device) Pulsed(p Pulses, by Edge) Tripping {
	c := d.curve()
	t, least := c.opens(p.OnA, by), c.leastA()
	x, on := square(p.OffA/least), square(p.OnA/least)
	switch {
	case !(p.OnA > 0):
		return Tripping{}
	case !(least > 0) || x >= 1 || t == 0:
		return Tripping{Cycle: 1}
	case !(on > 1) || math.IsInf(t, 1):
		return Tripping{}
	}
	tau := t / math.Log(on/(on-1))
	before := x
	for n := 1; n <= mostCycles; n++ {
		if after := tau * math.Log((on-x)/(on-1)); after <= p.OnS*(1+sameMultiple) {
			return Tripping{n, math.Max(0, after)}
		}
		hot := on - (on-x)*math.Exp(-p.OnS/tau)
		next := before + (hot-before)*math.Exp(-(p.EveryS-p.OnS)/tau)
		if next-x < settled {
			break
		}
		x = next
	}
	return Tripping{}
}

const (
	mostCycles = 10_000
	settled    = 1e-9 // of the heat that opens it, from cycle to cycle
)

func square(x float64) float64 { return x * x }

// leastA is the current that it just carries.
func (c *curve) leastA() float64 { return c.hotA * c.carries }

// opens is the opening time from cold by an edge; +Inf for never.
func (c *curve) opens(amps float64, by Edge) float64 {
	fast, known := c.fast(amps)
	if by == Fastest || math.IsInf(fast, 1) {
		return fast
	}
	if slow, both := c.slow(amps); known && both {
		return math.Sqrt(fast * slow)
	}
	return math.Inf(1)
}

// bodyS is the time constant of the whole device, from the middle of its band at the
// first multiple where both edges are known; 0 = not known.
func (c *curve) bodyS() float64 {
	for _, p := range c.band {
		fast, first := edge(c.band, p.Multiple, opensAfter)
		slow, last := edge(c.band, p.Multiple, opensBefore)
		if m := square(p.Multiple / c.carries); m > 1 && fast.Seconds() > 0 && slow.Seconds() > 0 && first > below && last > below {
			return math.Sqrt(fast.Seconds()*slow.Seconds()) / math.Log(m/(m-1))
		}
	}
	return 0
}

// ForGoodA is the current for good that makes the device as warm as the pulses do at
// the warmest: over short cycles the root of the mean square, in a long pulse all of
// it. Of a device without a middle of its band it is the current while on.
//
//	I² = Off² + (On² − Off²)·(1 − e^(−on/τ))/(1 − e^(−every/τ))
//
// Source: as Pulsed; the root of the mean square is the rule of the duty tables of IS 9857
// and NEC 630.11 (one source each).
func (d Device) ForGoodA(p Pulses) float64 {
	off := square(p.OffA)
	return math.Sqrt(off + (square(p.OnA)-off)*d.curve().warmed(p))
}

// warmed is the share of a pulse's heat that counts as for good.
func (c *curve) warmed(p Pulses) float64 {
	tau := c.bodyS()
	if !(tau > 0) || !(p.OnS > 0) || !(p.EveryS > p.OnS) {
		return 1
	}
	return math.Expm1(-p.OnS/tau) / math.Expm1(-p.EveryS/tau)
}

// slowS is how long a slow device holds twice its rating at the soonest, as strips do and blades do not: motors are run
// behind such for a time at more than the rating, behind no other (common practice, no
// source).
const slowS = 1

// Slow tells whether a device is made to hold more than its rating for a time.
func (d Device) Slow() bool {
	c := d.curve()
	t, known := c.fast(2 * c.hotA)
	return known && t >= slowS
}

// holdsLonger is how much longer than it flows a fuse must hold a current at the soonest.
// Source: manuals of thrusters: a slow fuse that holds the draw for 5 min, of another
// 3 min of running at the most (one source each).
const holdsLonger = 5.0 / 3

// WhileOnA is the most that a device carries in the pulses' time on: of a slow one as
// PulsedA, by the fastest edge with time to spare; of others what they carry for good.
func (d Device) WhileOnA(p Pulses, forGoodA float64, by Edge) float64 {
	if !d.Slow() {
		return forGoodA
	}
	if by == Fastest {
		p.OnS *= holdsLonger
	}
	p.OnA = math.Inf(1)
	return d.PulsedA(p, forGoodA, by)
}

// PulsedA is the most that may flow in the pulses' time on, of a device that carries
// forGoodA for good: no warmer than by that, and not enough to open it by an edge.
// Never less than forGoodA.
func (d Device) PulsedA(p Pulses, forGoodA float64, by Edge) float64 {
	if !complete(d) || !(forGoodA > p.OffA) {
		return forGoodA
	}
	d = d.Prepared()
	c := d.curve()
	off := square(p.OffA)
	high := math.Sqrt(off + (square(forGoodA)-off)/c.warmed(p))
	low := math.Max(forGoodA, math.Min(high, c.leastA()))
	holds := func(amps float64) bool {
		p.OnA = amps
		return d.Pulsed(p, by).Cycle == 0
	}
	if holds(high) {
		return high
	}
	for range 40 {
		if mid := (low + high) / 2; holds(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
