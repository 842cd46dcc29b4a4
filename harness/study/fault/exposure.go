package fault

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/library"
)

// Condition is a supply voltage that equipment is tested with.
type Condition struct {
	Volts   float64
	Seconds float64
	Source  library.Source
}

// HighFor is the long overvoltage of a regulator that failed high: 18 V for
// 60 min in 12 V systems, 36 V in 24 V systems, other systems in proportion.
// ISO 16750-2 tests it at 20 K below the highest ambient.
func HighFor(systemV float64) Condition {
	return Condition{Volts: 1.5 * systemV, Seconds: 3600, Source: library.Source{
		Text:      "ISO 16750-2, long-term overvoltage: 18 V (12 V systems), 36 V (24 V systems), 60 min",
		Certainty: library.FromMemory}}
}

// ReverseFor is the battery connected the wrong way round: −14 V for 60 s in
// 12 V systems, −28 V in 24 V systems, other systems in proportion.
func ReverseFor(systemV float64) Condition {
	return Condition{Volts: -systemV * 14 / 12, Seconds: 60, Source: library.Source{
		Text:      "ISO 16750-2, reversed voltage: 14 V (12 V systems), 28 V (24 V systems), 60 s",
		Certainty: library.FromMemory}}
}

// Reached says what has to be closed for the battery to reach a part.
type Reached string

// The ways of being reached.
const (
	AtOnce  Reached = "at once" // as soon as the battery is connected
	ByHand  Reached = "by switch"
	WithKey Reached = "with the key"
	Never   Reached = "never"
)

// Exposure is one accessory, or one relay coil, under both conditions.
type Exposure struct {
	Branch *circuit.Branch
	// HighV is the highest voltage it gets while the regulator is failed, in
	// HighIn. What no situation with the engine running turns on is judged as if
	// it were on: HighIn is nil then. NaN when nothing turns it on.
	HighV  float64
	HighIn *design.Situation
	BearsV float64 // its maximum voltage; 0 = the design does not say
	// Reached by a reversed battery, and whether it suffers: the design says
	// so, or it is electronics, of which nobody said that it does not.
	Reached Reached
	Suffers bool
	Says    bool // the design says that it suffers
	Diode   bool // a diode across a coil, which a reversed battery drives forward
	// DiodeVia is the nearest fuse above the diode; nil when some way has none.
	DiodeVia *circuit.Branch
}

// Over tells whether the overvoltage is more than it bears.
func (e *Exposure) Over() bool { return e.BearsV > 0 && e.HighV > e.BearsV }

// exposures goes through accessories and coils.
func (s *Study) exposures() {
	c := s.Circuit
	highV, highIn := s.underHigh()
	rest, hand := c.LiveKeyOff(false), c.LiveKeyOff(true)
	fed := s.fedAtAll()
	reached := func(n *circuit.Node) Reached {
		switch {
		case rest[n.Index]:
			return AtOnce
		case hand[n.Index]:
			return ByHand
		case fed[n.Index]:
			return WithKey
		}
		return Never
	}
	for _, b := range loads(c) {
		l := accessory(b)
		s.Exposed = append(s.Exposed, &Exposure{Branch: b, HighV: highV[b.Index], HighIn: highIn[b.Index],
			BearsV: l.MaxV.Or(0), Reached: reached(b.A), Says: l.Polarised,
			Suffers: l.Polarised || l.Behaves == design.ConstantPower})
	}
	guards := c.Guards()
	for _, b := range coils(c) {
		e := &Exposure{Branch: b, HighV: highV[b.Index], HighIn: highIn[b.Index], Reached: reached(b.A)}
		if r, ok := b.Part.Source.(*design.Relay); ok && r.Coil.Suppressed == "diode" {
			e.Diode, e.Suffers = true, true
			if fuses, bare := guards.Above(b.A); !bare && len(fuses) > 0 {
				e.DiodeVia = fuses[0]
			}
		}
		s.Exposed = append(s.Exposed, e)
	}
}

// fedAtAll marks what the battery reaches with every contact closed.
func (s *Study) fedAtAll() []bool {
	return circuit.Reach(s.Circuit, func(*circuit.Branch) bool { return true }, s.Circuit.Posts()...)
}

// underHigh is the highest voltage of each branch with the regulator failed,
// over the situations with the engine running; as if on, without a situation,
// where none turns it on; NaN where that is not possible either.
func (s *Study) underHigh() (volts []float64, in []*design.Situation) {
	c := s.Circuit
	volts, in = make([]float64, len(c.Branches)), make([]*design.Situation, len(c.Branches))
	for i := range volts {
		volts[i] = math.NaN()
	}
	if !c.Design.Charging.Present() {
		return volts, in
	}
	take := func(sit, named *design.Situation, wants func(i int) bool) (solved bool) {
		sol := s.plan.Network(sit, solve.Options{NoCharging: true, BatteryV: s.High.Volts,
			BatteryOhm: circuit.LeastOhm, AcceptFolded: true}).Solution()
		if sol.Status != solve.Converged {
			return false
		}
		for i, b := range c.Branches {
			if v := sol.Volts(b); drawsVoltage(b) && wants(i) && math.Abs(v) > idleV && !(v <= volts[i]) {
				volts[i], in[i] = v, named
			}
		}
		return true
	}
	unsolved := map[*design.Load]bool{} // listed, but where there is no result
	for _, sit := range c.Design.Situations {
		if circuit.Running(sit) && !take(sit, sit, func(int) bool { return true }) {
			for _, l := range sit.On {
				unsolved[l] = true
			}
		}
	}
	unlisted := &design.Situation{Key: design.KeyOn, EngineRPM: math.Max(1, c.Design.Charging.CruiseRPM.Or(0)),
		With: c.Design.Conditions}
	for _, b := range loads(c) {
		if math.IsNaN(volts[b.Index]) && !unsolved[accessory(b)] {
			unlisted.On = append(unlisted.On, accessory(b))
		}
	}
	if len(unlisted.On) > 0 {
		take(unlisted, nil, func(i int) bool { return in[i] == nil })
	}
	return volts, in
}
