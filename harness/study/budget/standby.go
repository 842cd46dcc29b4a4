package budget

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// careC is the temperature at which a battery's hours and days are given: the
// one its capacity is rated at.
const careC = battery.RatedC

// startBackAh is what has to go into the battery to give back what a start took; NaN
// without a capacity.
func startBackAh(d *design.Design, s battery.Start) float64 {
	b := battery.Of(d)
	if b == nil {
		return math.NaN()
	}
	return b.ToReturnAh(s.Ah())
}

// hoursToReturn is how long a current to spare gives back what a start took; NaN
// without a capacity.
func hoursToReturn(d *design.Design, s battery.Start, spareA float64) float64 {
	b := battery.Of(d)
	if b == nil {
		return math.NaN()
	}
	return b.HoursToReturn(s.Ah(), spareA)
}

// StandbyDays is how long a full battery starts the engine under a drain in
// amperes, self-discharge counted; NaN without a capacity. Whatever is said of how long a
// battery lasts is this.
func StandbyDays(d *design.Design, drainA float64) float64 {
	b := battery.Of(d)
	if b == nil {
		return math.NaN()
	}
	return b.DaysToNoStart(drainA, 1, careC)
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
// nothing switched on, no sun and no shore power.
func IsParked(s *design.Situation) bool {
	return s.Key == design.KeyOff && len(s.On) == 0 && len(s.Closed) == 0 && len(s.Held) == 0 && s.Sun == 0 && !s.Shore
}

// DrawA is the average current of a load, coil or other branch in a solution:
// accessories by their duty, the vehicle's loads as solved, with theirs counted.
func DrawA(s *solve.Solution, b *circuit.Branch) float64 {
	a := math.Abs(s.BranchA[b.Index])
	if math.IsNaN(a) {
		return 0
	}
	return a * Average(s.Circuit.Design, s.Situation)(b)
}
