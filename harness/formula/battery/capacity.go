package battery

import "math"

// PeukertHours is the time in hours that a battery gives a steady current:
//
//	t = H · (C / (I·H))^n
//
// with the capacity C rated over H hours, and n = 1 below the rated current
// C/H, since makers promise no bonus there. +Inf for no current. Source:
// Peukert's law with the rated hour, as battery monitor manuals apply it.
func PeukertHours(capacityAh, rateH, n, amps float64) float64 {
	if !(amps > 0) {
		return math.Inf(1)
	}
	ratio := capacityAh / (amps * rateH)
	if ratio > 1 {
		n = 1
	}
	return rateH * math.Pow(ratio, n)
}

// PeukertExponent is the exponent between two measured rates:
// n = ln(t1/t2) / ln(I2/I1).
func PeukertExponent(hours1, amps1, hours2, amps2 float64) float64 {
	return math.Log(hours1/hours2) / math.Log(amps2/amps1)
}

// CapacityShare is the share of the rated capacity available at a temperature:
// straight lines through the library's rows, going on at the slope of the last
// two below the lowest (not under 5 %), and held above the highest.
func (b *Battery) CapacityShare(celsius float64) float64 {
	t := b.chem.CapacityAt
	last := len(t) - 1
	switch {
	case last < 0:
		return 1
	case celsius >= t[last].Celsius:
		return t[last].Share
	}
	i := 1
	for celsius > t[i].Celsius {
		i++
	}
	slope := (t[i].Share - t[i-1].Share) / (t[i].Celsius - t[i-1].Celsius)
	return math.Max(t[i-1].Share+slope*(celsius-t[i-1].Celsius), 0.05)
}

// weight is how many ampere-hours a discharge of one counts for: Peukert's law.
func (b *Battery) weight(amps float64) float64 {
	ratio := amps * b.rateH / b.capacityAh
	if ratio <= 1 {
		return 1
	}
	return math.Pow(ratio, b.chem.Peukert-1)
}

// AvailableAh is what a full battery gives at a steady current and temperature.
func (b *Battery) AvailableAh(amps, celsius float64) float64 {
	return b.capacityAh * b.CapacityShare(celsius) / b.weight(amps)
}

// EmptyCharge is the state of charge at which nothing more is available.
func (b *Battery) EmptyCharge(celsius float64) float64 {
	return math.Max(1-b.CapacityShare(celsius), 0)
}

// StartReserve is the state of charge below which starting is not sure. The
// chemistry's reserve holds at 25 °C; at other temperatures the share that may
// be used shrinks as the capacity does: 1 − (1 − reserve)·CapacityShare. The
// reserve is a rule of trade bulletins; its course with temperature is derived.
func (b *Battery) StartReserve(celsius float64) float64 {
	usable := 1 - b.chem.StartReserve
	return 1 - usable*math.Min(b.CapacityShare(celsius), 1)
}

// HoursBetween is how long a steady discharge takes the battery from one state
// of charge to another; 0 when it is there already, +Inf for no current.
func (b *Battery) HoursBetween(from, to, amps float64) float64 {
	if !(amps > 0) {
		return math.Inf(1)
	}
	return math.Max(from-to, 0) * b.capacityAh / (amps * b.weight(amps))
}
