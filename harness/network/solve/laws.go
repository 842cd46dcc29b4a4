package solve

import (
	"math"

	"fusewright/harness/network/circuit"
)

// LawKind is which of the current laws a branch follows.
type LawKind uint8

// The current laws. All but Power and Sparing grow with voltage, so that a network without
// constant-power loads has one operating point and no more.
const (
	Ohmic   LawKind = iota // i = v / Ohm
	Lamp                   // filament: i = CurrentA·(v/RatedV)^0.55, linear below EdgeV
	Power                  // constant power: i = PowerW / v, resistive below EdgeV
	Torque                 // constant current CurrentA, resistive below EdgeV (motor)
	Fan                    // motor of a fan or pump: circuit.FanA, resistive below EdgeV
	Store                  // battery: EMFV behind Ohm; charging behind ChargeOhm up to LimitA
	Valve                  // diode: (v-EMFV)/Ohm above its knee EMFV, v/ChargeOhm below; EMFV negative = the other way round
	Charger                // EMFV (regulated) behind Ohm, never below 0 A nor above LimitA
	Sparing                // constant power that spares its source: PowerW / v, but never more than (v-EMFV)/Ohm, none below EMFV

	LawKinds // how many there are; as a law, none: its current is not a number

	folded // a straight line in place of other branches: LimitA at EMFV, slope 1/Ohm; see Local
)

// Constants of the load laws. Netlists use the same ones.
const (
	// LampExponent is that of package circuit.
	LampExponent = circuit.LampExponent
	// LampEdge is the share of rated voltage below which a filament counts as
	// cold and ohmic. At 0.01 the cold resistance is 0.01^0.45 = 1/7.9 of the
	// hot one, inside the 6 to 10 times cold-filament inrush of the trade
	// (common practice, no source).
	LampEdge = 0.01
	// PowerFold is the share of rated voltage below which a constant-power
	// load counts as resistive, P·v/(0.5·Vr)². By the maximum power theorem a
	// feed gives most when the load has half of the source voltage: a load
	// below half of its rated voltage is past what the feed can carry, and a
	// solution that ends there is a collapse, not a result.
	PowerFold = 0.5
	// TorqueEdge is the armature's share of rated voltage in a running motor:
	// below it the motor stalls and is its armature resistance, so that at
	// rated voltage it starts with five times its running current. Published
	// start ratios of small DC motors are 3 (pump) to 7 (large); source:
	// maker's article on DC motor inrush and voltage drop.
	TorqueEdge = 0.2
	// FanEdge is the share of rated voltage below which a fan counts as resistive, so that
	// every voltage has a slope.
	FanEdge = 0.01
)

// Law is the current law of one branch with its numbers; fields that a kind
// does not use are zero. Loads are odd: reversed voltage, reversed current.
type Law struct {
	Kind      LawKind
	Ohm       float64 // Ohmic; inner resistance of Store and Charger; Sparing: slope above EMFV; Fan: winding
	PowerW    float64 // Power, Sparing
	CurrentA  float64 // Lamp and Fan at RatedV, Torque
	RatedV    float64 // Lamp, Fan
	EdgeV     float64 // Lamp, Power, Torque, Fan: resistive below
	EMFV      float64 // Store (negative = posts swapped), Charger; Valve: knee (negative = reversed)
	ChargeOhm float64 // Store: resistance against charging; Valve, Charger: of its leak, 0 = none
	LimitA    float64 // Store: most it accepts; Charger: most it gives
}

// At is the current from A to B in amperes at a voltage from A to B, and the
// slope dI/dV in siemens.
func (l *Law) At(v float64) (amps, siemens float64) {
	switch l.Kind {
	case Ohmic:
		return v / l.Ohm, 1 / l.Ohm
	case Store:
		if l.EMFV < 0 {
			i, g := l.store(-v, -l.EMFV)
			return -i, g
		}
		return l.store(v, l.EMFV)
	case Charger:
		return l.charger(v)
	case Valve:
		if l.EMFV < 0 {
			i, g := l.valve(-v, -l.EMFV)
			return -i, g
		}
		return l.valve(v, l.EMFV)
	case Sparing:
		return l.sparing(v)
	case folded:
		return l.LimitA + (v-l.EMFV)/l.Ohm, 1 / l.Ohm
	}
	if v < 0 {
		i, g := l.load(-v)
		return -i, g
	}
	return l.load(v)
}

// load is the law of a load at v ≥ 0.
func (l *Law) load(v float64) (amps, siemens float64) {
	switch l.Kind {
	case Lamp:
		if v > l.EdgeV {
			i := l.CurrentA * math.Pow(v/l.RatedV, LampExponent)
			return i, LampExponent * i / v
		}
		g := l.CurrentA * math.Pow(l.EdgeV/l.RatedV, LampExponent) / l.EdgeV
		return g * v, g
	case Power:
		if v > l.EdgeV {
			return l.PowerW / v, -l.PowerW / (v * v)
		}
		g := l.PowerW / (l.EdgeV * l.EdgeV)
		return g * v, g
	case Fan:
		i, g := circuit.FanA(math.Max(v, l.EdgeV), l.CurrentA, l.RatedV, l.Ohm)
		if v > l.EdgeV {
			return i, g
		}
		return i / l.EdgeV * v, i / l.EdgeV
	case Torque:
		if v > l.EdgeV { // a trace of slope keeps two motors in series regular
			return l.CurrentA, 1e-9 * l.CurrentA / l.EdgeV
		}
		g := l.CurrentA / l.EdgeV
		return g * v, g
	}
	return math.NaN(), math.NaN()
}

// store is the battery: below its EMF it discharges through Ohm, above it
// takes charge through ChargeOhm until LimitA.
func (l *Law) store(v, emf float64) (amps, siemens float64) {
	if v <= emf {
		return (v - emf) / l.Ohm, 1 / l.Ohm
	}
	i := (v - emf) / l.ChargeOhm
	if i > l.LimitA {
		return l.LimitA, 0
	}
	return i, 1 / l.ChargeOhm
}

// sparing takes constant power, and less rather than pull its source below EMFV.
func (l *Law) sparing(v float64) (amps, siemens float64) {
	switch spare := (v - l.EMFV) / l.Ohm; {
	case spare <= 0:
		return 0, 0
	case spare <= l.PowerW/v:
		return spare, 1 / l.Ohm
	}
	return l.PowerW / v, -l.PowerW / (v * v)
}

// valve is a diode: a leak up to the knee, a straight line above it.
func (l *Law) valve(v, knee float64) (amps, siemens float64) {
	if v <= knee {
		return v / l.ChargeOhm, 1 / l.ChargeOhm
	}
	return knee/l.ChargeOhm + (v-knee)/l.Ohm, 1 / l.Ohm
}

// charger gives current (negative from A to B) while the posts are below the
// regulated voltage. Regulator and limit are one monotone law, so Newton needs
// no switching between "regulates" and "at its limit".
func (l *Law) charger(v float64) (amps, siemens float64) {
	out := (l.EMFV - v) / l.Ohm
	switch {
	case out <= 0 && l.ChargeOhm > 0: // a trace of slope, where nothing else holds its output
		return (v - l.EMFV) / l.ChargeOhm, 1 / l.ChargeOhm
	case out <= 0:
		return 0, 0
	case out >= l.LimitA:
		return -l.LimitA, 0
	}
	return -out, 1 / l.Ohm
}
