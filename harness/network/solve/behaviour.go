package solve

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// behaviours is how loads draw, a row for each of design.Behaviours: the law of one
// that takes powerW at its rated voltage.
var behaviours = map[design.Behaviour]func(powerW, ratedV float64) Law{
	design.Resistor: func(w, v float64) Law { return Law{Kind: Ohmic, Ohm: v * v / w} },
	design.FilamentLamp: func(w, v float64) Law {
		return Law{Kind: Lamp, CurrentA: w / v, RatedV: v, EdgeV: LampEdge * v}
	},
	design.ConstantPower: func(w, v float64) Law { return Law{Kind: Power, PowerW: w, EdgeV: PowerFold * v} },
	design.Motor:         func(w, v float64) Law { return Law{Kind: Torque, CurrentA: w / v, EdgeV: TorqueEdge * v} },
}

// behaviourLaw is the law of a load that takes powerW at its rated voltage, of a fan its own; that of
// a behaviour without a row has no current, so that no solution comes of it.
func behaviourLaw(spec *circuit.LoadSpec, powerW float64) Law {
	if !(powerW > 0) || !(spec.RatedV > 0) {
		return Law{}
	}
	if spec.FanStall > 0 {
		a := powerW / spec.RatedV
		return Law{Kind: Fan, CurrentA: a, RatedV: spec.RatedV, Ohm: spec.WindingOhm(a), EdgeV: FanEdge * spec.RatedV}
	}
	if law := behaviours[spec.Behaves]; law != nil {
		return law(powerW, spec.RatedV)
	}
	return Law{Kind: LawKinds}
}
