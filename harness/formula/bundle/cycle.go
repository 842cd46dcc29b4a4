package bundle

import (
	"math"
	"slices"
)

// Cycle is a load that is on for a time and comes again every so often.
type Cycle struct {
	OnS float64
	// EveryS is from one start to the next; not more than OnS = on for good.
	EveryS float64
}

// duty is the part of the time that it is on, 0..1.
func (c Cycle) duty() float64 {
	switch {
	case !(c.OnS > 0):
		return 0
	case !(c.EveryS > c.OnS):
		return 1
	}
	return c.OnS / c.EveryS
}

// ages is a time that is as good as for good.
const ages = 1e9

// within keeps the times where they can be reckoned with; what is no number is
// taken as on for good.
func (c Cycle) within() Cycle {
	if math.IsNaN(c.OnS) || math.IsNaN(c.EveryS) {
		return Cycle{OnS: ages}
	}
	c.OnS = min(ages, max(0, c.OnS))
	c.EveryS = min(ages, max(c.OnS, c.EveryS))
	return c
}

// Peak are the highest temperatures over a time, in °C: of the conductor, of the
// middle of its insulation and of the bundle in the mean. +Inf where copper melts.
type Peak struct{ ConductorC, InsulationC, BundleC float64 }

func (p *Peak) take(x Peak) {
	p.ConductorC = max(p.ConductorC, x.ConductorC)
	p.InsulationC = max(p.InsulationC, x.InsulationC)
	p.BundleC = max(p.BundleC, x.BundleC)
}

func every(c float64) Peak { return Peak{c, c, c} }

// coldest is below every temperature.
var coldest = every(math.Inf(-1))

// Course is how hot a wire gets under a cycle.
type Course struct {
	First   Peak // in the first cycle, from the steady state of what is not pulsed
	Settled Peak // when the cycles have gone on for good
}

// Course follows wire i while the pulsed wires of the bundle carry their currents
// together in the on-times of the cycle, and the others theirs for good.
func (b *Bundle) Course(i int, cy Cycle) Course {
	c := Course{coldest, coldest}
	cy = cy.within()
	mean := b.pulsedBy(math.Sqrt(cy.duty()))
	start, settled := b.start(i), mean.steady(i)
	groups, few := b.groups(i, mean)
	if few == 0 { // nothing flows
		return Course{start, start}
	}
	hottest, at := math.Inf(-1), 0
	for k, g := range groups {
		p, n := coldest, b.network(i, g)
		n.cycle(n.from(start), cy, &p)
		if c.First.take(p); p.ConductorC > hottest {
			hottest, at = p.ConductorC, k
		}
	}
	for k, g := range groups {
		if k < few || k == at {
			n := b.network(i, g)
			n.settle(&c.Settled, n.from(settled), cy)
		}
	}
	c.Settled.take(c.First)
	return c
}

// HotAfterS is the time in seconds for which everything may be on, from the
// steady state of what is not pulsed, until the conductor of wire i comes to its
// limit: 0 when it is there already, +Inf when it never comes there.
func (b *Bundle) HotAfterS(i int) float64 {
	limit, start, after := b.wires[i].LimitC, b.start(i), math.Inf(1)
	switch {
	case start.ConductorC >= limit:
		return 0
	case b.overC(i) <= 0:
		return after
	}
	groups, _ := b.groups(i, b)
	for _, g := range groups {
		n := b.network(i, g)
		after = min(after, n.reach(n.from(start), limit))
	}
	return after
}

// start is the steady state before the first on-time.
func (b *Bundle) start(i int) Peak { return b.pulsedBy(0).steady(i) }

// steady is the steady state of wire i, with the hottest place of the bundle in
// place of its mean.
func (b *Bundle) steady(i int) Peak {
	medium, conductorC := b.full().mediumC, b.overC(i)+b.wires[i].LimitC
	return Peak{conductorC, (conductorC + medium) / 2, medium}
}

// pulsedBy is the bundle with the pulsed currents at a factor.
func (b *Bundle) pulsedBy(factor float64) *Bundle {
	c := &Bundle{wires: slices.Clone(b.wires), place: b.place}
	for i := range c.wires {
		if c.wires[i].Pulsed {
			c.wires[i].CurrentA *= factor
		}
	}
	c.lay()
	return c
}
