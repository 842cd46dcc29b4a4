package warm

import (
	"math"
	"slices"

	"fusewright/harness/design"

	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/library"
)

// Laid is a wire where it is laid: what it may carry there in the time that it is
// on, and how warm it gets.
type Laid struct {
	conductor.Allowed
	Wire     *circuit.Wire
	In       *circuit.Bundle // the run that reduces its current most; nil outside runs
	AmbientC float64
	ToClassA float64 // what brings it to its class in that time, without the margin
	Pulse    bundle.Pulse

	curve *curve // nil = type or size not known

	insulated conductor.Insulated
	in        []surroundings // by situation of the design
}

// surroundings are what a wire has round it in a situation, where it gets hottest.
type surroundings struct {
	beside conductor.Beside
	open   float64 // of its current, what cover and altitude leave
}

// Heat is how a wire gets as hot as it does.
type Heat struct {
	ForGoodA float64 // the current for good that warms it as much as one that is on for a time
	Open     float64 // of what it may carry, what cover and altitude leave
	conductor.Heat
}

// ConductorC is the steady temperature in °C at a current in amperes of either
// direction, of a wire that is on for a time that of the hottest moment of its
// settled cycles; +Inf when there is none below the melting point of copper. A wire
// whose type is not known stays at its ambient.
func (l *Laid) ConductorC(amps float64) float64 {
	if amps == 0 {
		return l.AmbientC
	}
	return l.HeatIn(-1, amps).ConductorC
}

// ConductorIn is ConductorC beside what the others carry in a situation of the design,
// by its index, also of a wire without current; below 0 it is ConductorC.
func (l *Laid) ConductorIn(situation int, amps float64) float64 {
	return l.HeatIn(situation, amps).ConductorC
}

// HeatIn is how a wire gets as hot as ConductorIn says.
func (l *Laid) HeatIn(situation int, amps float64) Heat {
	amps = math.Abs(amps)
	if l.curve == nil || amps == 0 && (situation < 0 || situation >= len(l.in)) {
		return Heat{amps, 1, conductor.Heat{AloneC: l.AmbientC, ConductorC: l.AmbientC}}
	}
	h := Heat{ForGoodA: l.Pulse.ForGoodA(amps), Open: l.CoverShare * l.AltShare}
	beside := l.Beside
	if situation >= 0 && situation < len(l.in) {
		h.Open, beside = l.in[situation].open, l.in[situation].beside
	}
	h.Heat = beside.Heat(l.AmbientC, h.ForGoodA/h.Open, l.curve.celsius)
	return h
}

// Ohm is the resistance of a branch while a current of either direction in amperes flows through it
// as long as its wire is on for, in ohms: of a wire as warm as that makes it.
func (m *Model) Ohm(b *circuit.Branch, amps float64) float64 {
	return solve.ResistanceOf(b, &solve.Options{WireTempC: func(w *circuit.Wire) float64 {
		return capped(m.Wires[w.Index].ConductorC(amps))
	}}).Ohm()
}

// HotAfterS is how long the wire may be left on, from its ambient, until its
// conductor comes to the limit that its allowance stands for; +Inf = for good. 0
// where part of its current flows for good or it is not known.
func (l *Laid) HotAfterS(amps float64) float64 {
	out := l.Outlet(l.AmbientC)
	placeC := l.AmbientC + out.BesideK
	if l.curve == nil || l.Pulse.SteadyA > 0 || !(l.LimitC > placeC) {
		return 0
	}
	w := bundle.Wire{Insulated: l.insulated, CurrentA: amps, LimitC: l.LimitC, Pulsed: true}
	b, err := bundle.New([]bundle.Wire{w}, bundle.Place{AmbientC: placeC, Share: out.Share})
	if err != nil {
		return 0
	}
	return b.HotAfterS(0)
}

// Balance is the heat balance of the wire alone in still air at its ambient; nil where
// its type or size is not known.
func (l *Laid) Balance() *conductor.Balance {
	if l.curve == nil {
		return nil
	}
	return conductor.NewBalance(l.insulated, conductor.StillAir{AmbientC: l.AmbientC})
}

// Model is the wires of a circuit where they are laid. It is read-only once
// made and may be shared.
type Model struct {
	Circuit *circuit.Circuit
	// AboveK is how much hotter than the default a place is whose ambient the
	// design does not give.
	AboveK float64
	Wires  []Laid // by wire index

	rater *conductor.Rater
	lib   *library.Library
}

// kind is what a curve depends on.
type kind struct {
	wire     *library.WireType
	size     *library.WireSize
	ambientC float64
}

// New rates every wire of a circuit at the design's ambients.
func New(c *circuit.Circuit) *Model {
	if d := c.Design; d != nil && d.Library != nil {
		return NewBy(c, conductor.NewRater(d.Library, d.Practice))
	}
	return NewBy(c, nil)
}

// NewBy is New with a rater of the design's library and practice that remembers
// from circuit to circuit.
func NewBy(c *circuit.Circuit, rater *conductor.Rater) *Model {
	m := &Model{Circuit: c, rater: rater}
	if rater != nil {
		m.lib = c.Design.Library
	}
	m.lay()
	return m
}

// Hotter is the same wires with every place hotter by a number of kelvin whose
// ambient the design does not give: a given one is the highest expected. What
// they may carry there is that of the worst case (conductor.Rater.AllowedAtWorst).
func (m *Model) Hotter(byK float64) *Model {
	hot := &Model{Circuit: m.Circuit, AboveK: m.AboveK + byK, rater: m.rater, lib: m.lib}
	hot.lay()
	return hot
}

func (m *Model) lay() {
	m.Wires = make([]Laid, len(m.Circuit.Wires))
	for i, w := range m.Circuit.Wires {
		m.Wires[i] = m.layWire(w)
	}
}

// layWire rates a wire where it is laid.
func (m *Model) layWire(w *circuit.Wire) Laid {
	if m.rater == nil {
		return Laid{Wire: w, AmbientC: w.AmbientC + m.AboveK,
			Allowed: conductor.Allowed{Missing: []string{"no parts library, so no allowed current"}}}
	}
	p := w.InPlace(m.rater, w.Spec.Size, m.AboveK)
	l := Laid{Allowed: p.Allowed, Wire: w, In: p.In, AmbientC: p.At.AmbientC, Pulse: p.Pulse}
	if p.At.Type != nil && p.At.Size != nil {
		l.ToClassA = p.Pulse.MostA(m.rater.ToClassA(p.At))
		l.insulated = m.rater.Insulated(p.At.Type, p.At.Size)
		l.curve = m.curveOf(kind{p.At.Type, p.At.Size, l.AmbientC})
		l.in = m.surround(&l)
	}
	return l
}

// surround finds the run in which the wire gets hottest, by situation; nil outside runs.
func (m *Model) surround(l *Laid) []surroundings {
	if len(l.Wire.Route) == 0 || m.Circuit.Design == nil {
		return nil
	}
	all := make([]surroundings, len(m.Circuit.Design.Situations))
	for s := range all {
		all[s] = surroundings{conductor.Alike(1), l.CoverShare * l.AltShare}
		hottest := math.Inf(-1)
		for _, b := range l.Wire.Route {
			if h, ok := b.HeatIn(s, l.Wire); ok && h.ConductorC > hottest {
				hottest = h.ConductorC
				all[s] = surroundings{h.Beside, b.CoverShare() * l.AltShare}
			}
		}
	}
	return all
}

// SituationOf is the index of a situation of the design; -1 for one made elsewhere.
func (m *Model) SituationOf(s *design.Situation) int {
	if m.Circuit.Design == nil {
		return -1
	}
	return slices.Index(m.Circuit.Design.Situations, s)
}

func (m *Model) curveOf(k kind) *curve {
	return m.rater.Kept(k, func() any {
		material := m.lib.Insulation(k.wire.Material)
		return newCurve(conductor.InsulatedWire(k.size, material), k.ambientC)
	}).(*curve)
}
