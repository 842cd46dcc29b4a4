package bundle

import (
	"math"

	"fusewright/harness/formula/conductor"
)

// State is the steady state of a bundle. Temperatures are +Inf where copper melts.
type State struct {
	ConductorC []float64 // of each wire, in the order of New
	MediumC    float64   // hottest place between the wires; what a wire without current takes
	SurfaceC   float64   // outside of the wires, below a cover
	LossWPerM  float64   // heat of the wires that count
	OuterMm    float64   // their diameter together; 0 when none carries current
	Counted    int       // how many they are
}

// Steady is the steady state with all currents flowing for good.
func (b *Bundle) Steady() State {
	c := b.full()
	s := State{MediumC: c.mediumC, SurfaceC: c.surfaceC, LossWPerM: c.lossW, Counted: c.n,
		ConductorC: make([]float64, len(b.wires))}
	if c.n > 0 {
		s.OuterMm = c.outerMm()
	}
	for i := range s.ConductorC {
		s.ConductorC[i] = c.mediumC
	}
	for _, t := range b.strands {
		s.ConductorC[t.wire] = t.conductorC(c.mediumC, 1)
	}
	return s
}

// conductorC is that of wire i in the steady state, in what it lies among.
func (b *Bundle) conductorC(i int) float64 {
	c, _ := b.around(i)
	return b.strand(i).conductorC(c.mediumC, 1)
}

// conductorC is the temperature of a strand's conductor in a medium.
func (s strand) conductorC(mediumC, x float64) float64 {
	t := mediumC + s.heat(x)*ratio(mediumC)*s.t1
	if t <= conductor.CopperMeltsC {
		return t
	}
	return math.Inf(1)
}
