package solve

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// behaviour is how loads of a kind draw: the law of one that takes powerW at
// its rated voltage, and how its current changes when its voltage changes by a
// ratio.
type behaviour struct {
	law  func(powerW, ratedV float64) Law
	amps func(ratio float64) float64
}

// behaviours has one row for each of design.Behaviours: a load that behaves
// otherwise needs a row here before the design may name it.
var behaviours = map[design.Behaviour]behaviour{
	design.Resistor: {
		func(w, v float64) Law { return Law{Kind: Ohmic, Ohm: v * v / w} },
		func(ratio float64) float64 { return ratio }},
	design.FilamentLamp: {
		func(w, v float64) Law { return Law{Kind: Lamp, CurrentA: w / v, RatedV: v, EdgeV: LampEdge * v} },
		func(ratio float64) float64 { return math.Pow(ratio, LampExponent) }},
	design.ConstantPower: {
		func(w, v float64) Law { return Law{Kind: Power, PowerW: w, EdgeV: PowerFold * v} },
		func(ratio float64) float64 { return 1 / ratio }},
	design.Motor: {
		func(w, v float64) Law { return Law{Kind: Torque, CurrentA: w / v, EdgeV: TorqueEdge * v} },
		func(float64) float64 { return 1 }},
}

// behaviourOf is the row of a behaviour; of none, as in networks put together by
// hand, the resistor's.
func behaviourOf(b design.Behaviour) behaviour {
	if row, ok := behaviours[b]; ok {
		return row
	}
	return behaviours[design.Resistor]
}

// behaviourLaw is the law of a load that takes powerW at its rated voltage.
func behaviourLaw(spec *circuit.LoadSpec, powerW float64) Law {
	if !(powerW > 0) || !(spec.RatedV > 0) {
		return Law{}
	}
	return behaviourOf(spec.Behaves).law(powerW, spec.RatedV)
}

// AtVoltage is how the current of a load changes when its voltage changes by a
// ratio, above the voltage at which its law folds back.
func AtVoltage(b design.Behaviour, ratio float64) float64 { return behaviourOf(b).amps(ratio) }
