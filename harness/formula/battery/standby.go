package battery

import (
	"math"

	"fusewright/library"
)

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

// Standing is how long a drain and self-discharge take a battery from one state of charge to
// another, with what it is reckoned from.
type Standing struct {
	From, To        float64 // states of charge
	DrainA          float64
	Weight          float64 // by which a drain above the rated current takes more: Peukert
	RatedA, Peukert float64
	CapacityAh      float64
	DrainPerDay     float64 // of the capacity
	LostPerMonth    float64 // at 20 °C, of what is in it
	Celsius         float64
	LostPerDay      float64 // of what is in it
	Days            float64
	Source          library.Source // of the chemistry's figures
}

// Stand is how long a steady drain in amperes and self-discharge at a
// temperature take the battery from one state of charge to another. With k the
// self-discharge per day and i = drain over capacity per day,
//
//	t = ln((from + i/k) / (to + i/k)) / k
//
// +Inf when nothing is lost, 0 when it is there already. A drain is far below
// the rated current, where Peukert's law promises no bonus and takes nothing.
func (b *Battery) Stand(from, to, drainA, celsius float64) Standing {
	s := Standing{From: from, To: to, DrainA: drainA, Weight: b.weight(drainA), RatedA: b.capacityAh / b.rateH, Peukert: b.chem.Peukert,
		CapacityAh: b.capacityAh, LostPerMonth: b.chem.SelfDischarge, Celsius: celsius, Source: b.chem.Source}
	s.DrainPerDay = 24 / b.HoursBetween(1, 0, drainA)
	s.LostPerDay = b.selfDischarge(celsius) * secondsPerDay
	i, k := s.DrainPerDay, s.LostPerDay
	switch {
	case from <= to:
	case i == 0 && k == 0:
		s.Days = math.Inf(1)
	case k < 1e-9*i:
		s.Days = (from - to) / i
	default:
		s.Days = math.Log((from+i/k)/(to+i/k)) / k
	}
	return s
}

// DaysBetween is the days of Stand.
func (b *Battery) DaysBetween(from, to, drainA, celsius float64) float64 {
	return b.Stand(from, to, drainA, celsius).Days
}

// DaysToNoStart is how long a parked vehicle may stand until starting is not
// sure, from a state of charge, at a temperature.
func (b *Battery) DaysToNoStart(drainA, charge, celsius float64) float64 {
	return b.DaysBetween(charge, b.StartReserve(celsius), drainA, celsius)
}
