package budget

import (
	"math"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/solve"
)

// Figures for a battery whose chemistry is not known: flooded lead-acid, the
// least favourable of the usual ones.
const (
	peukertUnknown = 1.25 // battery monitor manuals, flooded (two sources)
	reserveUnknown = 0.6  // no start after 40 % used: car maker's bulletin
	rateUnknownH   = 20.0
)

// usableShare is the part of the capacity that may be drawn before starting is
// not sure.
func usableShare(b *design.Battery) float64 {
	if b.Chemistry != nil && b.Chemistry.StartReserve > 0 {
		return 1 - b.Chemistry.StartReserve
	}
	return 1 - reserveUnknown
}

// BatteryHours is how long a full battery gives a current in amperes before it
// reaches its start reserve, by Peukert's law with the rated hour H and
// capacity C: t = (1 − reserve)·H·(C/(I·H))^k. Below the rated current the
// law is not used to promise more than C. NaN without a capacity.
func BatteryHours(b *design.Battery, currentA float64) float64 {
	if !b.CapacityAh.Given() {
		return math.NaN()
	}
	if !(currentA > 0) {
		return math.Inf(1)
	}
	k, rate := peukertUnknown, rateUnknownH
	if b.Chemistry != nil {
		k, rate = orElse(b.Chemistry.Peukert, k), orElse(b.Chemistry.RatedH, rate)
	}
	rate = b.RateH.Or(rate)
	c := b.CapacityAh.Value
	full := rate * math.Pow(c/(currentA*rate), k)
	return usableShare(b) * math.Min(full, c/currentA)
}

func orElse(v, fallback float64) float64 {
	if v > 0 {
		return v
	}
	return fallback
}

// StandbyDays is how long a drain in amperes leaves the battery able to start
// the engine: days = C·(1 − reserve) / (24·I). Neither the rate effect, which
// would lengthen it, nor self-discharge, which shortens it, is counted. +Inf
// without a drain, NaN without a capacity.
func StandbyDays(b *design.Battery, drainA float64) float64 {
	if !(drainA > 0) {
		return math.Inf(1)
	}
	if !b.CapacityAh.Given() {
		return math.NaN()
	}
	return b.CapacityAh.Value * usableShare(b) / (24 * drainA)
}

// Parked is the solution of the machine left alone with the largest drain. A
// design in whose every key-off situation something is on is solved for the
// parked state besides; nil when no such state converges.
func Parked(c *circuit.Circuit, sols []*solve.Solution) *solve.Solution {
	var worst *solve.Solution
	given := false
	for _, s := range sols {
		if !IsParked(s.Situation) {
			continue
		}
		given = true
		if s.Status == solve.Converged && (worst == nil || s.BatteryA > worst.BatteryA) {
			worst = s
		}
	}
	if given {
		return worst
	}
	s := solve.Solve(c, &design.Situation{Name: "key off", Key: design.KeyOff, Derived: true}, solve.Options{})
	if s.Status != solve.Converged {
		return nil
	}
	return s
}

// IsParked tells whether a situation is the machine left alone: key off,
// nothing switched on.
func IsParked(s *design.Situation) bool {
	return s.Key == design.KeyOff && len(s.On) == 0 && len(s.Closed) == 0
}

// DrawA is the average current of a load, coil or other branch in a solution:
// accessories by their duty, the vehicle's loads as solved, with theirs counted.
func DrawA(s *solve.Solution, b *circuit.Branch) float64 {
	a := math.Abs(s.BranchA[b.Index])
	if math.IsNaN(a) {
		return 0
	}
	if b.Load != nil && b.Load.Load != nil {
		return a * dutyOf(b.Load)
	}
	return a
}

// drainA is the average current out of the battery in a solution; 0 without one.
func drainA(s *solve.Solution) float64 {
	if s == nil {
		return 0
	}
	drain := s.BatteryA
	for _, b := range s.Circuit.Branches {
		if b.Load != nil && b.Load.Load != nil {
			drain -= DrawA(s, b) * (1/dutyOf(b.Load) - 1)
		}
	}
	return math.Max(0, drain)
}
