package battery

import "math"

// AcceptedA is the current that the battery takes when its posts are held at
// 14.4 V (of the 12 V class). Between the library's rows the logarithm goes in a
// straight line; beyond them the end row holds, and never more than MostChargeA.
// Cold lowers it as it raises the inner resistance: common practice, no source.
func (b *Battery) AcceptedA(charge, celsius float64) float64 {
	most := b.MostChargeA(celsius)
	return math.Min(most, b.capacityAh*b.acceptedShare(charge)/b.cold(celsius))
}

func (b *Battery) acceptedShare(charge float64) float64 {
	t := b.chem.Acceptance
	last := len(t) - 1
	switch {
	case charge <= t[0].Charge:
		return t[0].Share
	case charge >= t[last].Charge:
		return t[last].Share
	}
	i := 1
	for charge > t[i].Charge {
		i++
	}
	part := (charge - t[i-1].Charge) / (t[i].Charge - t[i-1].Charge)
	return t[i-1].Share * math.Pow(t[i].Share/t[i-1].Share, part)
}

// MostChargeA is the highest charging current that the battery should get or
// takes; 0 below the temperature at which it must not be charged.
func (b *Battery) MostChargeA(celsius float64) float64 {
	if celsius < b.chem.NoChargeBelowC {
		return 0
	}
	return b.capacityAh * b.chem.ChargeShare / b.cold(celsius)
}

// ChargeOhm is the resistance against charging, by which the battery takes
// AcceptedA at 14.4 V: a plain resting voltage behind milliohms would swallow
// hundreds of amperes at the regulated voltage, where a full battery in truth
// takes almost nothing. +Inf when it must not be charged.
func (b *Battery) ChargeOhm(charge, celsius float64) float64 {
	return b.ChargeOhmFrom(b.OpenCircuitV(charge, celsius), charge, celsius)
}

// ChargeOhmFrom is ChargeOhm for another resting voltage.
func (b *Battery) ChargeOhmFrom(restV, charge, celsius float64) float64 {
	accepted := b.AcceptedA(charge, celsius)
	if !(accepted > 0) {
		return math.Inf(1)
	}
	rise := math.Max(fullChargeV12*b.class-restV, 0.1*b.class)
	return math.Max(rise/accepted, b.Ohm(charge, celsius))
}

// State is a battery at one state of charge and one temperature, for a search of
// its voltage. Make it with At.
type State struct {
	emfV, ohm        float64
	chargeOhm, mostA float64
}

// At is the battery at a state of charge and a temperature.
func (b *Battery) At(charge, celsius float64) State {
	return State{emfV: b.OpenCircuitV(charge, celsius), ohm: b.Ohm(charge, celsius),
		chargeOhm: b.ChargeOhm(charge, celsius), mostA: b.MostChargeA(celsius)}
}

// Amps is the current out of the battery at a voltage of its posts; negative
// when it is charged. It grows as the voltage falls, without a jump.
func (s State) Amps(volts float64) float64 {
	if volts <= s.emfV {
		return (s.emfV - volts) / s.ohm
	}
	return -math.Min((volts-s.emfV)/s.chargeOhm, s.mostA)
}

// WorthA is a current out of the battery as its charge feels it: of what is put in (negative) only what it stores.
func (b *Battery) WorthA(amps float64) float64 {
	if amps < 0 {
		return amps * b.chem.ChargeEfficiency
	}
	return amps
}

// Rate is how fast the state of charge changes, per second, at a current out of
// the battery (negative = charging): Peukert's weight on what is taken, the
// charge efficiency on what is put in, and self-discharge. A full battery rises
// no further.
func (b *Battery) Rate(amps, charge, celsius float64) float64 {
	perSecond := 1 / (3600 * b.capacityAh)
	lost := b.selfDischarge(celsius) * charge
	if amps >= 0 {
		return -amps*b.weight(amps)*perSecond - lost
	}
	if charge >= 1 {
		return 0
	}
	return -b.WorthA(amps)*perSecond - lost
}
