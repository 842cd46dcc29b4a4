package conductor

import (
	"fmt"
	"math"

	"fusewright/library"
)

// DamageInput is a wire, its surroundings and its state when a fault comes.
type DamageInput struct {
	Type     *library.WireType
	Size     *library.WireSize
	Material *library.Insulation // nil = not in the library
	AmbientC float64
	StartC   float64 // conductor temperature at the start; below ambient counts as ambient
	Outlet   Outlet
}

// Damage is the damage curve of a wire: the time that a current may flow before
// the insulation is hurt. It combines three limits, each with the length of
// time it is published for:
//
//   - the short-circuit limit of the insulation must never be passed;
//   - the overload limit may be passed for no longer than ShortS, 5 s, the time
//     that short-circuit limits are given for;
//   - the class may be passed for overloadS, 6 h (ISO 6722 thermal overload).
//
// A limit that is not published falls back to the next lower one; Missing says
// so. Longer currents rise the temperature more slowly: TimeS never grows with
// the current.
type Damage struct {
	ClassC, OverloadC, ShortC float64
	Missing                   []string
	curves                    [3]heating // to ClassC, OverloadC, ShortC
}

const (
	// ShortS is how long short-circuit limits hold (IEC 60724, IEC 60364-4-43).
	ShortS = 5.0
	// overloadS is the thermal overload test of ISO 6722-1 (from memory).
	overloadS = 6 * 3600.0
)

// NewDamage prepares the damage curve. A wire without type or size stands
// nothing: every time is zero.
func NewDamage(in DamageInput) *Damage {
	d := &Damage{}
	if in.Type == nil || in.Size == nil {
		d.Missing = append(d.Missing, "the wire type or size is not in the library")
		return d
	}
	d.limits(in)
	w := InsulatedWire(in.Size, in.Material)
	if !w.valid() {
		d.Missing = append(d.Missing, fmt.Sprintf("no diameters for %s %s", in.Type.Name, in.Size.Label))
		return d
	}
	b := NewBalance(w, StillAir{AmbientC: in.AmbientC})
	start := math.Max(in.StartC, in.AmbientC)
	for i, limit := range []float64{d.ClassC, d.OverloadC, d.ShortC} {
		d.curves[i] = newHeating(b, start, limit, in.Outlet)
	}
	return d
}

// limits takes the published limits of the wire type, then of the material.
func (d *Damage) limits(in DamageInput) {
	t := in.Type
	d.ClassC, d.OverloadC, d.ShortC = t.ClassC, t.OverloadC, t.ShortC
	if d.ShortC == 0 && in.Material != nil {
		d.ShortC = in.Material.ShortC
	}
	if d.OverloadC == 0 {
		d.Missing = append(d.Missing,
			fmt.Sprintf("no overload limit published for %s: its class, %g °C, is taken", t.Name, t.ClassC))
	}
	d.OverloadC = math.Max(d.OverloadC, d.ClassC)
	if d.ShortC == 0 {
		d.Missing = append(d.Missing,
			fmt.Sprintf("no short-circuit limit published for %s: %g °C is taken", t.Name, d.OverloadC))
	}
	d.ShortC = math.Max(d.ShortC, d.ClassC)
	d.OverloadC = math.Min(d.OverloadC, d.ShortC)
}

// TimeS is how long a current may flow before damage; +Inf when the wire
// carries it without passing the overload limit for good and the class for
// more than overloadS, except that a current which only passes the class gives
// that time.
func (d *Damage) TimeS(currentA float64) float64 {
	short := d.curves[2].seconds(currentA)
	return math.Min(short, math.Min(d.overloadTime(currentA), d.classTime(currentA)))
}

// FaultTimeS is TimeS without the limit of the class: what an overcurrent
// device must beat, since it is not there to keep a wire to its rated life.
func (d *Damage) FaultTimeS(currentA float64) float64 {
	short := d.curves[2].seconds(currentA)
	if short <= ShortS { // the overload limit may be passed for as long
		return short
	}
	return math.Min(short, d.overloadTime(currentA))
}

func (d *Damage) overloadTime(currentA float64) float64 {
	return math.Max(ShortS, d.curves[1].seconds(currentA))
}

func (d *Damage) classTime(currentA float64) float64 {
	return math.Max(overloadS, d.curves[0].seconds(currentA))
}

// ToClassS, ToOverloadS and ToShortS are the times in which a current brings
// the conductor from its start to one limit; +Inf when it never does.
func (d *Damage) ToClassS(currentA float64) float64 { return d.curves[0].seconds(currentA) }

// ToOverloadS is the time to the overload limit.
func (d *Damage) ToOverloadS(currentA float64) float64 { return d.curves[1].seconds(currentA) }

// ToShortS is the time to the short-circuit limit.
func (d *Damage) ToShortS(currentA float64) float64 { return d.curves[2].seconds(currentA) }

// heating is the one-node thermal model of a wire between two temperatures:
//
//	C · dT/dt = I²·R(T) − W(T),  C = copper + insulation, per metre, W by Outlet
//
// W is laid down at the knots and taken straight between them, and R is a
// straight line, so that each stretch has a closed solution:
// dt = C/b · ln(p2/p1), with p the net heating at its ends. Below fastS the
// insulation has no time to take part: copper alone, without loss, as
// IEC 60949 takes it; above slowS the whole wire; between them a mean on
// log axes.
type heating struct {
	adiabatic    float64 // A²s from start to end with copper alone
	whole        float64 // heat capacity of copper and insulation, J/(m·K)
	startC, endC float64
	knots        [heatingKnots]struct{ c, ohm, loss float64 }
	ready        bool
}

const (
	heatingKnots = 17
	fastS, slowS = 1.0, 10.0
)

func newHeating(b *Balance, startC, endC float64, out Outlet) heating {
	w := b.wire
	h := heating{startC: startC, endC: endC, ready: b.ok}
	// k²S² with the published resistance in place of that of a solid area.
	h.adiabatic = WithstandI2t(w.AreaMm2, startC, endC) * CopperOhmMm2PerM / w.AreaMm2 / w.OhmPerM20
	plastic := math.Pi / 4 * (w.OuterMm*w.OuterMm - w.ConductorMm*w.ConductorMm)
	h.whole = 1000 * (CopperHeatJPerMm3K*w.AreaMm2 + w.InsulationJPerMm3K*plastic)
	for i := range h.knots {
		k := &h.knots[i]
		k.c = startC + (endC-startC)*float64(i)/(heatingKnots-1)
		k.ohm = AtTemperature(w.OhmPerM20, k.c)
		k.loss = out.LossWPerM(b, k.c)
	}
	return h
}

// seconds is the time from start to end at a current.
func (h *heating) seconds(currentA float64) float64 {
	switch {
	case !h.ready:
		return 0
	case math.IsNaN(currentA):
		return 0
	case !(h.endC > h.startC):
		return h.already(currentA)
	}
	fast := h.adiabatic / (currentA * currentA)
	if fast <= fastS {
		return fast
	}
	slow := math.Max(fast, h.wholeWire(currentA))
	if fast >= slowS || math.IsInf(slow, 1) {
		return slow
	}
	f := math.Log(fast/fastS) / math.Log(slowS/fastS)
	return math.Exp((1-f)*math.Log(fast) + f*math.Log(slow))
}

// already answers for a wire that starts at its limit: it stays there for good
// only if the current brings no net heat.
func (h *heating) already(currentA float64) float64 {
	k := h.knots[heatingKnots-1]
	if currentA*currentA*k.ohm <= k.loss {
		return math.Inf(1)
	}
	return 0
}

func (h *heating) wholeWire(currentA float64) float64 {
	i2 := currentA * currentA
	total := 0.0
	for i := 1; i < heatingKnots; i++ {
		a, b := h.knots[i-1], h.knots[i]
		p1, p2 := i2*a.ohm-a.loss, i2*b.ohm-b.loss
		if p1 <= 0 || p2 <= 0 {
			return math.Inf(1)
		}
		total += h.whole * (b.c - a.c) * logMean(p1, p2)
	}
	return total
}

// logMean is ln(p2/p1)/(p2 − p1), which is 1/p when both are the same.
func logMean(p1, p2 float64) float64 {
	x := (p2 - p1) / p1
	if math.Abs(x) < 1e-6 {
		return (1 - x/2) / p1
	}
	return math.Log1p(x) / (p2 - p1)
}
