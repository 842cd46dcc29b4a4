package battery

import "math"

const secondsPerDay = 86400.0

// selfDischarge is the share lost per second: the library's share of 30 days at
// 20 °C, doubled every 10 kelvin (common practice, no source).
func (b *Battery) selfDischarge(celsius float64) float64 {
	share := b.chem.SelfDischarge
	if !(share > 0) {
		return 0
	}
	return -math.Log(1-share) / (30 * secondsPerDay) * math.Pow(2, (celsius-20)/10)
}

// DaysBetween is how long a steady drain in amperes and self-discharge at a
// temperature take the battery from one state of charge to another. With k the
// self-discharge per day and i = drain over capacity per day,
//
//	t = ln((from + i/k) / (to + i/k)) / k
//
// +Inf when nothing is lost, 0 when it is there already. A drain is far below
// the rated current, where Peukert's law promises no bonus and takes nothing.
func (b *Battery) DaysBetween(from, to, drainA, celsius float64) float64 {
	if from <= to {
		return 0
	}
	i := 24 / b.HoursBetween(1, 0, drainA)
	k := b.selfDischarge(celsius) * secondsPerDay
	switch {
	case i == 0 && k == 0:
		return math.Inf(1)
	case k < 1e-9*i:
		return (from - to) / i
	}
	return math.Log((from+i/k)/(to+i/k)) / k
}

// ChargeAfter is the state of charge that a steady drain in amperes and self-discharge at a
// temperature leave after so many days: DaysBetween the other way round. Never below 0.
//
//	q = (from + i/k)·e^(−k·t) − i/k
func (b *Battery) ChargeAfter(from, drainA, celsius, days float64) float64 {
	i, k := 0.0, b.selfDischarge(celsius)*secondsPerDay
	if drainA > 0 {
		i = 24 / b.HoursBetween(1, 0, drainA)
	}
	if k < 1e-9*i || k == 0 {
		return math.Max(from-i*days, 0)
	}
	return math.Max((from+i/k)*math.Exp(-k*days)-i/k, 0)
}

// DaysToNoStart is how long a parked vehicle may stand until starting is not
// sure, from a state of charge, at a temperature.
func (b *Battery) DaysToNoStart(drainA, charge, celsius float64) float64 {
	return b.DaysBetween(charge, b.StartReserve(celsius), drainA, celsius)
}
