package bundle

import (
	"math"

	"fusewright/harness/formula/conductor"
)

// Growth is how the currents of a bundle hang on that of one wire, by wire: each is FixedA
// and of its current OfEach, but no fuller loaded than that wire, which is FullOfEach of its
// current, where it carries less than that now: what is fuller is found for itself. The sign
// does not matter.
type Growth struct{ FixedA, OfEach, FullOfEach, NowA []float64 }

func (g Growth) amps(j int, x float64) float64 {
	if g.OfEach[j] == 0 {
		return g.FixedA[j]
	}
	return math.Min(g.FixedA[j]+g.OfEach[j]*x, math.Max(g.NowA[j], g.FullOfEach[j]*x))
}

func (b *Bundle) growth() Growth {
	n := len(b.wires)
	g := Growth{make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)}
	for j, w := range b.wires {
		g.NowA[j] = math.Abs(w.CurrentA)
	}
	return g
}

// around is the core that wire i is in or in the middle of, and its wires. One wire alone
// surrounds no other: then the two of them.
func (b *Bundle) around(i int) (core, []int) {
	best := b.full()
	if best.n != 1 || b.strands[0].wire == i {
		return best, b.first(best.n)
	}
	var two core
	two.add(b.strands[0], 1)
	two.add(b.strand(i), 1)
	b.settle(&two)
	best, members := two, []int{b.strands[0].wire, i}
	if c := b.hotter(best, 2, 1); c.mediumC > best.mediumC {
		best, members = c, b.first(c.n)
	}
	var own core
	if own.add(b.strand(i), 1); own.lossW20 > traceW {
		if b.settle(&own); own.mediumC > best.mediumC {
			best, members = own, []int{i}
		}
	}
	return best, members
}

// Along is the growth of the wires that carry a current of wire i with it: with[j]
// amperes of that of wire j are its loads'. The others stay as they are.
func (b *Bundle) Along(i int, with []float64) Growth {
	g := b.alone(i)
	own, alone := g.NowA[i], b.AloneA(i)
	for j, a := range with {
		if j != i && a != 0 && own > 0 {
			g.FixedA[j], g.OfEach[j] = math.Max(0, g.FixedA[j]-a), math.Abs(a)/own
			if g.FullOfEach[j] = g.OfEach[j]; alone > 0 {
				g.FullOfEach[j] = b.AloneA(j) / alone
			}
		}
	}
	return g
}

// alone is the growth of wire i with all others as they are.
func (b *Bundle) alone(i int) Growth {
	g := b.growth()
	copy(g.FixedA, g.NowA)
	g.FixedA[i], g.OfEach[i], g.FullOfEach[i] = 0, 1, 1
	return g
}

// together is the growth of all wires by one factor.
func (b *Bundle) together(i int) Growth {
	g := b.growth()
	for j, w := range b.wires {
		g.OfEach[j] = math.Abs(w.CurrentA / b.wires[i].CurrentA)
		g.FullOfEach[j] = g.OfEach[j]
	}
	return g
}

// Among is wire i among the others: what they leave it, how they warm it, and how hot
// its conductor is with all currents as they are. The wires of its own loads carry more
// as it does, the others what they carry. Where that takes it past its limit it may carry
// what all of them may by one factor, as a grouping factor has it: with the others as they
// are that would soon be nothing.
func (b *Bundle) Among(i int, along Growth) (beside conductor.Beside, conductorC float64) {
	w, conductorC := b.wires[i], b.conductorC(i)
	place, _ := b.at(func(j int) float64 { return along.FixedA[j] }).around(i)
	beside.RiseK = math.Ceil((place.mediumC-b.place.AmbientC)/riseStepK-nearly) * riseStepK
	beside.RiseK = math.Min(beside.RiseK, conductor.CopperMeltsC)
	placeC := b.place.AmbientC + beside.RiseK
	amps := b.grownA(i, w.LimitC, along)
	switch { // its own warming, where that can be told from the others'
	case conductorC > w.LimitC && within(conductorC, placeC+leastOwnK, conductor.CopperMeltsC):
		beside.Own = b.ownShare(i, beside.RiseK, math.Abs(w.CurrentA), conductorC)
	case w.LimitC >= placeC+leastOwnK && amps > 0:
		beside.Own = b.ownShare(i, beside.RiseK, amps, w.LimitC)
	default:
		atC := placeC + wellOwnK
		beside.Own = b.ownShare(i, beside.RiseK, b.grownA(i, atC, along), atC)
	}
	alone := b.AloneA(i)
	if beside.Cold = beside.Own; beside.RiseK > 0 && alone > 0 {
		cold := along
		cold.FixedA = make([]float64, len(along.FixedA))
		beside.Cold = b.ownShare(i, 0, b.grownA(i, w.LimitC, cold), w.LimitC)
	}
	switch {
	case !(alone > 0):
		beside.Share = 1 // of nothing
	case conductorC > w.LimitC && w.CurrentA != 0:
		beside.Share = b.grownA(i, w.LimitC, b.together(i)) / alone
	default:
		beside.Share = amps / alone
	}
	return beside, conductorC
}

// heatsShare is the loss, over that of the wire that loses most, from which a wire
// counts as loaded: a tenth of the current in a wire of the same size. Those of coils
// have less. The heat balance takes what each wire carries (our choice).
const heatsShare = 0.01

// Heats tells that a wire is one of those that heat the bundle.
func (b *Bundle) Heats(i int) bool {
	return b.mostW20 > 0 && b.strand(i).lossW20 >= heatsShare*b.mostW20
}

// Heating counts them.
func (b *Bundle) Heating() (count int) {
	for i := range b.wires {
		if b.Heats(i) {
			count++
		}
	}
	return count
}

// burntC is a conductor temperature at which no insulation is left, and up to which
// copper's resistance by the straight line holds (package conductor).
const burntC = 250

// BurntA is the current that brings a wire alone to where no insulation is left. What it
// carries beyond that is found for itself, and says nothing more of its neighbours.
func (b *Bundle) BurntA(i int) float64 { return b.aloneA(i, burntC) }

const (
	// riseStepK is the step to which a rise is rounded up, so that wires of one run
	// have it in common.
	riseStepK = 0.5
	// leastOwnK is the least warming of a wire by its own current that is told from that
	// by the others; where there is less, it is measured at wellOwnK.
	leastOwnK, wellOwnK = 1, 5
	// leastOwn bounds it where wires beside make many times the heat.
	leastOwn = 1e-3
)

// ownShare is that of a wire that a current brings to a temperature where others make
// its place hotter by riseK.
func (b *Bundle) ownShare(i int, riseK, amps, atC float64) float64 {
	air := conductor.NewBalance(b.wires[i].Insulated, conductor.StillAir{AmbientC: b.place.AmbientC})
	alone := conductor.Outlet{Share: b.place.Share, BesideK: riseK}.CurrentA(air, atC)
	return math.Max(amps/alone, leastOwn)
}

// grownA is the current of wire i, up to what it carries alone, at which its conductor
// comes to a temperature; 0 when it is there without. One core after another limits it;
// most often the first is the one.
func (b *Bundle) grownA(i int, toC float64, g Growth) float64 {
	amps := b.aloneA(i, toC)
	for range len(b.wires) + 1 {
		if amps == 0 {
			break
		}
		now := b.at(func(j int) float64 { return g.amps(j, amps) })
		core, members := now.around(i)
		if b.strandAt(i, amps).conductorC(core.mediumC, 1) <= toC+closeK {
			break
		}
		emissivity := min(now.emissivity, b.wires[i].Emissivity)
		amps = largest(amps, func(x float64) float64 { return b.excessW(members, g, i, toC, x, emissivity) })
	}
	return amps
}

// closeK is how near a temperature is found.
const closeK = 1e-4

// strandAt is wire i with a current.
func (b *Bundle) strandAt(i int, currentA float64) strand {
	w := b.wires[i]
	amps := currentA / b.place.Share
	return strand{i, amps * amps * w.OhmPerM20, ownKmPerW(w), w.OuterMm}
}

// excessW is the heat in W/m that a core of some wires makes beyond what it gives off,
// with wire i, in it or in the middle of it, at a temperature by a current.
func (b *Bundle) excessW(members []int, g Growth, i int, toC, amps, emissivity float64) float64 {
	s := b.strandAt(i, amps)
	medium := toC - s.lossW20*ratio(toC)*s.t1
	var c core
	for _, j := range members {
		c.add(b.strandAt(j, g.amps(j, amps)), 1)
	}
	q := c.lossW20 * ratio(medium)
	return q - b.surfaceOf(&c, emissivity).SurfaceLossWPerM(medium-q*(c.innerKmPerW()+b.place.CoverKmPerW))
}
