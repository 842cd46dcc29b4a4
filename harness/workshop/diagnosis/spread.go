package diagnosis

import (
	"math"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
)

// spread is one thing that is uncertain of a sound circuit, with its standard deviation folded in:
// a branch's resistance, a load's power, what a source has in a state, the air, a scale of the meter.
type spread struct {
	branch *circuit.Branch
	load   bool
	sd     float64 // ohms; of loads a share
	state  int     // of sources: where; -1 = everywhere
	source bool
	scale  int // of the meter; -1 = none
	air    []float64
}

// What a healthy circuit spreads by, beside the tolerances of its loads. Common practice, no source.
const (
	wireShare    = 0.03 // of a conductor: length as laid, copper below the standard's maximum
	airLowC      = 10.0
	airHighC     = 35.0
	storeSdV     = 0.25 // of a 12 V battery, charged and rested as the sheet asks or not quite
	batteryShare = 0.4  // of its inner resistance
	outputShare  = 0.15 // of what a charging system gives at the most
)

// contactShare is the standard deviation of the logarithm of a contact's resistance, which lies
// evenly between half and twice its data.
var contactShare = math.Log(bench.ContactHigh) * rectangular

// spreads lists what is uncertain, once the states are known.
func (m *model) uncertain() {
	air := make([]float64, len(m.c.Branches))
	add := func(s spread) { m.spreads = append(m.spreads, s) }
	for _, b := range m.c.Branches {
		switch b.Kind {
		case circuit.WireBranch:
			w := b.Wire
			add(spread{branch: b, sd: math.Hypot(wireShare*w.ConductorOhm20, contactShare*w.EndsOhm), state: -1, scale: -1})
			air[b.Index] = (conductor.AtTemperature(w.ConductorOhm20, airHighC) - conductor.AtTemperature(w.ConductorOhm20, airLowC)) / 2 * rectangular
		case circuit.ContactBranch, circuit.FuseBranch:
			add(spread{branch: b, sd: contactShare * b.Ohm, state: -1, scale: -1})
		case circuit.ResistorBranch:
			share := contactShare
			if b.Dropper() {
				share = bench.ResistorTolerance * rectangular
			}
			if b.OfCoil() {
				share = bench.CoilTolerance * rectangular
				air[b.Index] = b.Ohm * (conductor.AtTemperature(1, airHighC) - conductor.AtTemperature(1, airLowC)) / 2 * rectangular
			}
			add(spread{branch: b, sd: share * b.Ohm, state: -1, scale: -1})
		case circuit.LoadBranch:
			add(spread{branch: b, load: true, sd: m.loadTolerance(b) * rectangular, state: -1, scale: -1})
		case circuit.BatteryBranch:
			add(spread{branch: b, sd: batteryShare * b.Ohm, state: -1, scale: -1})
			for s := range m.states {
				add(spread{branch: b, source: true, sd: m.sourceSd(s, b), state: s, scale: -1})
			}
		case circuit.ChargerBranch, circuit.OutputBranch:
			for s := range m.states {
				add(spread{branch: b, source: true, sd: m.tol.RegulatedV * rectangular, state: s, scale: -1})
				add(spread{branch: b, load: true, sd: outputShare, state: s, scale: -1})
			}
		}
	}
	add(spread{air: air, state: -1, scale: -1})
	for scale := range gains {
		add(spread{sd: share(m.meter, scale), state: -1, scale: scale})
	}
}

// sourceSd is how far the volts behind the posts may be off in a state.
func (m *model) sourceSd(s int, b *circuit.Branch) float64 {
	if opt := m.states[s].opt; opt.BatteryV != 0 && b.A == m.c.Positive() {
		return m.tol.RegulatedV * rectangular
	}
	return storeSdV * m.c.Design.NominalV() / 12
}

// loadTolerance is how far a load's power may be off: the design's word, else the library's row.
func (m *model) loadTolerance(b *circuit.Branch) float64 {
	switch {
	case b.Load.Vehicle != nil:
		return bench.VehicleTolerance
	case b.Load.Load != nil && b.Load.Load.Tolerance.Given():
		return b.Load.Load.Tolerance.Value
	}
	return m.tol.Power[b.Load.Behaves]
}

// of is by how much a sensor moves with one standard deviation.
func (s *spread) of(by []float64, at *sensor, pred float64, source []float64) float64 {
	switch {
	case s.scale >= 0:
		if at.gain != s.scale || pred >= at.most() {
			return 0
		}
		return s.sd * pred
	case s.air != nil:
		sum := 0.0
		for i, x := range s.air {
			sum += x * by[i]
		}
		return sum
	case s.state >= 0 && s.state != at.state:
		return 0
	case s.source:
		if source == nil {
			return 0
		}
		return s.sd * source[s.branch.Index]
	}
	return s.sd * by[s.branch.Index]
}
