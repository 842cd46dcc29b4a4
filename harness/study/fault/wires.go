package fault

import (
	"math"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Wires is what the wires of a circuit bear, each worked out once.
type Wires struct {
	circuit *circuit.Circuit
	rater   *conductor.Rater
	laid    []circuit.InPlace // by wire index
	same    []int32           // the same number for wires laid in the same conditions
	bears   []bears
	damage  []*conductor.Damage
	heated  []*heating
}

// NewWires prepares the wires of a circuit, each in the run of its route that
// reduces its allowed current most.
func NewWires(c *circuit.Circuit) *Wires {
	return newWires(c, conductor.NewRater(c.Design.Library, c.Design.Practice))
}

func newWires(c *circuit.Circuit, rater *conductor.Rater) *Wires {
	n := len(c.Wires)
	w := &Wires{circuit: c, rater: rater,
		laid: make([]circuit.InPlace, n), same: make([]int32, n), bears: make([]bears, n),
		damage: make([]*conductor.Damage, n), heated: make([]*heating, n)}
	same, kinds := numbers[conductor.Conditions]{}, numbers[wireKind]{}
	for i, wire := range c.Wires {
		w.laid[i] = wire.InPlace(rater, wire.Spec.Size, 0)
		at, a := w.laid[i].At, &w.laid[i].Allowed
		w.same[i] = same.of(at)
		w.bears[i] = bears{kinds.of(wireKind{at.Type, at.Size, at.AmbientC, a.LimitC, a.CoverShare * a.AltShare, a.Beside.RiseK}), a.Outlet(at.AmbientC).Share}
	}
	return w
}

// wireKind is what, besides its share, tells how a wire heats up.
type wireKind struct {
	wire             *library.WireType
	size             *library.WireSize
	ambientC, limitC float64
	openShare        float64 // left by cover and altitude
	besideK          float64 // by which others warm it
}

// numbers gives each key a number, in the order in which they come.
type numbers[K comparable] map[K]int32

func (n numbers[K]) of(key K) int32 {
	at, known := n[key]
	if !known {
		at = int32(len(n))
		n[key] = at
	}
	return at
}

// Allowed is what a wire may carry where it is laid, for good or in its time on.
func (w *Wires) Allowed(of *circuit.Wire) conductor.Allowed { return w.laid[of.Index].Allowed }

// ForGoodA is the current for good that heats a wire as one does of which a part
// flows for good and the rest in the wire's own time on.
func (w *Wires) ForGoodA(of *circuit.Wire, amps, steadyA float64) float64 {
	p := w.laid[of.Index].Pulse
	p.SteadyA, p.UsedA = steadyA, amps
	return p.ForGoodA(amps)
}

// Kept is Kept of the rater behind the study.
func (w *Wires) Kept(key any, make func() any) any { return w.rater.Kept(key, make) }

// Stands is how long a wire stands a current, in seconds, of which it has its share where
// others lie side by side with it; +Inf for good.
func (w *Wires) Stands(of *circuit.Wire) func(amps float64) float64 {
	d := w.Damage(of)
	if of.Spec.Parallel < 2 {
		return d.FaultTimeS
	}
	return func(amps float64) float64 { return d.FaultTimeS(of.Branch.ShareA(amps)) }
}

// Damage is a wire's damage curve, from full service.
func (w *Wires) Damage(of *circuit.Wire) *conductor.Damage {
	if w.damage[of.Index] == nil {
		w.damage[of.Index] = w.rater.Damage(w.laid[of.Index].At)
	}
	return w.damage[of.Index]
}

// Rated tells whether a wire may carry a current for good. One whose surroundings
// are as hot as its insulation may carry none: rules on ratings say so, and it
// must not hide what a short does to the other wires on its way.
func (w *Wires) Rated(of *circuit.Wire) bool { return w.laid[of.Index].AllowedA > 0 }

// Heat is what a fault does to one wire.
type Heat struct {
	Wire    *circuit.Wire
	Amps    float64
	Seconds float64 // until the current stops; +Inf when nothing stops it; of several currents in turn as long as heats as much
	StartC  float64 // in full service: the insulation class less the practice's margin
	EndC    float64 // conductor temperature then; +Inf when the copper melts
	LimitC  float64 // short-circuit limit up to 5 s, overload limit beyond
	DamageS float64 // how long the wire stands the current; +Inf for good
	// Until is the device that ends it, where several feed the short and each ends a part of it.
	Until *circuit.Branch
}

// Survives tells whether the current stops before the wire is hurt.
func (h *Heat) Survives() bool { return h.Seconds < h.DamageS || math.IsInf(h.DamageS, 1) }

// Margin is the time the wire stands over the time that the current flows;
// +Inf when the wire stands it for good, 0 when nothing stops what hurts it.
func (h *Heat) Margin() float64 {
	if math.IsInf(h.DamageS, 1) {
		return math.Inf(1)
	}
	return h.DamageS / h.Seconds
}

// Heat works out what a current for a time does to a wire. One that never
// stops brings it to its steady temperature.
func (w *Wires) Heat(of *circuit.Wire, amps, seconds float64) Heat {
	h := w.stands(of, amps, seconds)
	w.finish(&h)
	return h
}

// stands is Heat without the end temperature, which costs more than the rest.
func (w *Wires) stands(of *circuit.Wire, amps, seconds float64) Heat {
	d, a := w.Damage(of), &w.laid[of.Index]
	h := Heat{Wire: of, Amps: amps, Seconds: seconds, StartC: a.ServiceC(of.AmbientC), EndC: math.NaN(),
		LimitC: d.ShortC, DamageS: d.FaultTimeS(amps)}
	if seconds > conductor.ShortS {
		h.LimitC = d.OverloadC
	}
	return h
}

// finish works out the end temperature, unless it is known.
func (w *Wires) finish(h *Heat) {
	switch of := h.Wire; {
	case !math.IsNaN(h.EndC):
	case of.Spec.Type == nil || of.Spec.Size == nil:
		h.EndC = math.Inf(1)
	case math.IsInf(h.Seconds, 1):
		h.EndC = w.model(of).steadyC(h.Amps)
	default:
		h.EndC = w.model(of).endC(h.Amps, h.Seconds)
	}
}

// model is how a wire heats up; its type and size must be known.
func (w *Wires) model(of *circuit.Wire) *heating {
	if m := w.heated[of.Index]; m != nil {
		return m
	}
	a := &w.laid[of.Index]
	key := heatKey{of.Spec.Type, of.Spec.Size, of.AmbientC, a.Outlet(of.AmbientC), a.ServiceC(of.AmbientC)}
	m := w.rater.Kept(key, func() any { return newHeating(key, w.circuit.Design.Library) }).(*heating)
	w.heated[of.Index] = m
	return m
}

// prepare works out every wire, so that several goroutines may ask.
func (w *Wires) prepare() {
	for _, wire := range w.circuit.Wires {
		w.Damage(wire)
		if wire.Spec.Type != nil && wire.Spec.Size != nil {
			w.model(wire)
		}
	}
}
