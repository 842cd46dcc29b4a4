package bundle

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sync"

	"fusewright/harness/formula/conductor"
)

// Wire is one wire of a bundle and what it carries.
type Wire struct {
	conductor.Insulated
	CurrentA float64 // while on; the sign does not matter
	LimitC   float64 // the conductor's class, less the margin if one is kept
	// Pulsed tells that the current flows only in the on-time of a Cycle. The
	// steady state takes it as flowing for good.
	Pulsed bool
}

// Place is what surrounds the whole bundle: still air, no sun, nothing touching.
type Place struct {
	AmbientC float64
	// Share is what cover and altitude leave of the current by the library's
	// factors, over 0 to 1: the same heat resistance that those factors stand
	// for lies in series, 1/Share² of it in all. 0 = nothing known, none.
	Share float64
	// CoverKmPerW is the resistance of a cover that is known as such, between
	// the wires and its outside, in K·m/W.
	CoverKmPerW float64
}

// Bundle is a bundle made ready for questions. It never changes, so it may be
// kept and asked from several goroutines; it hangs on the arguments of New alone.
type Bundle struct {
	wires      []Wire
	place      Place
	strands    []strand    // of the wires that carry current, most heat per section first
	emissivity float64     // the lowest of them
	mostW20    float64     // the greatest loss of one of them
	full       func() core // the hottest with all currents as they are
}

// strand is a wire that carries current.
type strand struct {
	wire    int
	lossW20 float64 // I²·R at 20 °C, W/m
	t1      float64 // K·m/W through its own insulation
	outerMm float64
}

// New makes a bundle ready. The error names the first wire without the data that
// the heat balance needs, or what of the place has no meaning; such a bundle has
// no answer, and that is to be said.
func New(wires []Wire, place Place) (*Bundle, error) {
	if place.Share == 0 {
		place.Share = 1
	}
	if err := place.check(); err != nil {
		return nil, err
	}
	b := &Bundle{wires: slices.Clone(wires), place: place}
	for i, w := range wires {
		if err := check(w); err != nil {
			return nil, fmt.Errorf("wire %d of the bundle: %w", i+1, err)
		}
	}
	b.lay()
	return b, nil
}

// within also refuses what is no number.
func within(x, low, high float64) bool { return x >= low && x <= high }

func (p Place) check() error {
	switch {
	case !within(p.AmbientC, -200, conductor.CopperMeltsC-1):
		return fmt.Errorf("an ambient of %g °C has no meaning here", p.AmbientC)
	case !within(p.Share, 0.01, 1):
		return fmt.Errorf("a cover that leaves %g of the current has no meaning", p.Share)
	case !within(p.CoverKmPerW, 0, 1e3):
		return fmt.Errorf("a cover of %g K·m/W has no meaning", p.CoverKmPerW)
	}
	return nil
}

func check(w Wire) error {
	switch {
	case !within(w.AreaMm2, 1e-6, 1e6) || !within(w.OhmPerM20, 1e-9, 1e6):
		return fmt.Errorf("no area or resistance")
	case !within(w.ConductorMm, 1e-3, 1e3) || !within(w.OuterMm, w.ConductorMm, 1e3):
		return fmt.Errorf("no diameters")
	case !within(w.ResistivityKmPerW, 0, 1e3) || !within(w.Emissivity, 0, 1) || !within(w.InsulationJPerMm3K, 0, 1):
		return fmt.Errorf("no thermal data of the insulation")
	case !within(w.CurrentA, -1e9, 1e9) || !within(w.LimitC, -1e4, 1e4):
		return fmt.Errorf("no current or limit")
	}
	return nil
}

// lay finds the strands. A wire without current is none: it counts neither as
// loaded nor as insulation.
func (b *Bundle) lay() {
	b.full = sync.OnceValue(func() core { return b.hottest(1) })
	b.strands = make([]strand, 0, len(b.wires))
	b.emissivity = 1
	for i, w := range b.wires {
		s := b.strand(i)
		if s.lossW20 < traceW {
			continue
		}
		b.strands = append(b.strands, s)
		b.emissivity, b.mostW20 = min(b.emissivity, w.Emissivity), max(b.mostW20, s.lossW20)
	}
	slices.SortStableFunc(b.strands, func(x, y strand) int {
		return cmp.Compare(y.lossW20/(y.outerMm*y.outerMm), x.lossW20/(x.outerMm*x.outerMm))
	})
}

func (b *Bundle) strand(i int) strand { return b.strandAt(i, b.wires[i].CurrentA) }

// traceW is a loss in W/m that warms nothing.
const traceW = 1e-12

// ownKmPerW is the resistance through a wire's own insulation in K·m/W:
// T1 = ρ·ln(D/d)/2π. Source: IEC 60287-2-1.
func ownKmPerW(w Wire) float64 {
	return w.ResistivityKmPerW * math.Log(w.OuterMm/w.ConductorMm) / (2 * math.Pi)
}

// with is the bundle with another current of one wire.
func (b *Bundle) with(i int, currentA float64) *Bundle {
	return b.at(func(j int) float64 {
		if j == i {
			return currentA
		}
		return b.wires[j].CurrentA
	})
}

// at is the bundle with other currents.
func (b *Bundle) at(amps func(i int) float64) *Bundle {
	c := &Bundle{wires: slices.Clone(b.wires), place: b.place}
	for i := range c.wires {
		c.wires[i].CurrentA = amps(i)
	}
	c.lay()
	return c
}
