package fault

import (
	"math"
	"sync"

	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// heatKey is what the heating of a wire depends on.
type heatKey struct {
	wire     *library.WireType
	size     *library.WireSize
	ambientC float64
	out      conductor.Outlet
	startC   float64
}

// heating answers how hot a conductor is after a time, by the same model that
// gives the damage curve (conductor.Damage), read the other way round: copper
// alone and no loss up to 1 s (IEC 60949), copper and insulation as one node
// that loses heat from 10 s on,
//
//	C · dT/dt = I²·R(T) − W(T),   W by conductor.Outlet
//
// and a mean on log axes between them.
type heating struct {
	key   heatKey
	wire  conductor.Insulated
	share float64 // of the published resistance in that of solid copper
	cap   float64 // J/(m·K), copper and insulation
	air   *conductor.Balance
	knots []knot // made when first needed: most faults end long before
	laid  sync.Once
}

// knot is the wire at one temperature.
type knot struct{ c, ohm, loss float64 }

const (
	heatKnots    = 41
	fastS, slowS = 1.0, 10.0
)

func newHeating(key heatKey, lib *library.Library) *heating {
	h := &heating{key: key,
		wire: conductor.InsulatedWire(key.size, lib.Insulation(key.wire.Material))}
	w := h.wire
	h.air = conductor.NewBalance(w, conductor.StillAir{AmbientC: key.ambientC})
	h.share = conductor.CopperOhmMm2PerM / w.AreaMm2 / w.OhmPerM20
	plastic := math.Pi / 4 * (w.OuterMm*w.OuterMm - w.ConductorMm*w.ConductorMm)
	h.cap = 1000 * (conductor.CopperHeatJPerMm3K*w.AreaMm2 + w.InsulationJPerMm3K*plastic)
	return h
}

// layKnots lays the heat loss down from the start to where copper melts.
func (h *heating) layKnots() {
	for i := range heatKnots {
		c := h.key.startC + (conductor.CopperMeltsC-h.key.startC)*float64(i)/(heatKnots-1)
		h.knots = append(h.knots, knot{c, conductor.AtTemperature(h.wire.OhmPerM20, c), h.key.out.LossWPerM(h.air, c)})
	}
}

// endC is the temperature after a time; +Inf when copper has melted by then.
func (h *heating) endC(amps, seconds float64) float64 {
	if !(amps > 0) || !(seconds > 0) {
		return h.key.startC
	}
	end := h.quick(amps, seconds)
	if seconds > fastS {
		h.laid.Do(h.layKnots)
		end = h.slow(amps, seconds)
	}
	if end >= conductor.CopperMeltsC {
		return math.Inf(1)
	}
	return end
}

// since is how long a current takes to bring the conductor to a temperature; +Inf when it never does.
func (h *heating) since(amps, toC float64) float64 {
	if !(toC > h.key.startC) {
		return 0
	}
	if !(toC < conductor.CopperMeltsC) || !(amps > 0) {
		return math.Inf(1)
	}
	h.laid.Do(h.layKnots)
	return h.takes(amps, toC)
}

// steadyC is the temperature at which a current stays for good, no lower than before.
func (h *heating) steadyC(amps float64) float64 {
	return math.Max(h.key.startC, h.key.out.SteadyC(h.air, amps))
}

// quick is copper alone.
func (h *heating) quick(amps, seconds float64) float64 {
	return conductor.AdiabaticEndC(amps*amps*seconds/h.share, h.wire.AreaMm2, h.key.startC)
}

// slow finds by halving the temperature that the model reaches in the time.
func (h *heating) slow(amps, seconds float64) float64 {
	low, high := h.key.startC, conductor.CopperMeltsC
	if h.takes(amps, high) <= seconds {
		return math.Inf(1)
	}
	for range 40 {
		mid := (low + high) / 2
		if h.takes(amps, mid) <= seconds {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// takes is the time from the start to a temperature; +Inf when it is never
// reached.
func (h *heating) takes(amps, toC float64) float64 {
	fast := conductor.WithstandI2t(h.wire.AreaMm2, h.key.startC, toC) * h.share / (amps * amps)
	if fast <= fastS {
		return fast
	}
	slow := math.Max(fast, h.wholeWire(amps, toC))
	if fast >= slowS || math.IsInf(slow, 1) {
		return slow
	}
	f := math.Log(fast/fastS) / math.Log(slowS/fastS)
	return math.Exp((1-f)*math.Log(fast) + f*math.Log(slow))
}

// wholeWire adds up the stretches between knots, each with its closed solution
// dt = C/b·ln(p2/p1), p the net heating at its ends.
func (h *heating) wholeWire(amps, toC float64) float64 {
	total := 0.0
	for i := 1; i < len(h.knots) && h.knots[i-1].c < toC; i++ {
		a, b := h.knots[i-1], h.knots[i]
		if b.c > toC {
			f := (toC - a.c) / (b.c - a.c)
			b = knot{toC, a.ohm + f*(b.ohm-a.ohm), a.loss + f*(b.loss-a.loss)}
		}
		p1, p2 := amps*amps*a.ohm-a.loss, amps*amps*b.ohm-b.loss
		if p1 <= 0 || p2 <= 0 {
			return math.Inf(1)
		}
		mean := 1 / p1
		if x := (p2 - p1) / p1; math.Abs(x) > 1e-6 {
			mean = math.Log1p(x) / (p2 - p1)
		}
		total += h.cap * (b.c - a.c) * mean
	}
	return total
}
