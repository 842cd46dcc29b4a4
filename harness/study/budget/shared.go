package budget

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// sharedStep is how much of a charge batteries that share their loads are followed by at once.
const sharedStep = 0.01

// HoursShared is how long the first battery still starts the engine in the situation of a solution with contacts
// held closed, in hours: both it and the further batteries run down together, each by what it
// gives. +Inf from so many hours on as are asked about; NaN where a state before them does not solve.
func HoursShared(of *solve.Solution, closed []*circuit.Branch, most float64) float64 {
	c, s := of.Circuit, of.Situation
	d := c.Design
	first := battery.Of(d)
	if first == nil {
		return math.NaN()
	}
	opt := solve.Options{SunOfDay: true, LoadFactor: Average(d, s), BankCharge: map[*design.Bank]float64{}}
	for _, b := range closed {
		opt.Changes = append(opt.Changes, solve.CloseBranch(b))
	}
	stores := map[*design.Bank]*battery.Battery{}
	for _, b := range d.Batteries {
		stores[b], opt.BankCharge[b] = battery.New(&b.Store, d.NominalV()), s.ChargeOf(b)
	}
	charge, hours, reserve := 1.0, 0.0, first.StartReserve(careC)
	for hours < most {
		opt.Discharged = 1 - charge
		sol := of.Again(opt)
		if sol.Status != solve.Converged {
			return math.NaN()
		}
		rate := 3600 * first.Rate(sol.BatteryA, charge, careC) // an hour
		rates := map[*design.Bank]float64{}
		fastest := math.Abs(rate)
		for _, p := range c.Parts {
			if b, ok := p.Source.(*design.Bank); ok {
				rates[b] = 3600 * stores[b].Rate(sol.Given(p.Branches[0]), opt.BankCharge[b], careC)
				fastest = math.Max(fastest, math.Abs(rates[b]))
			}
		}
		step := math.Min(sharedStep/fastest, 24)
		if left := (charge - reserve) / -rate; rate < 0 && left <= step {
			return hours + left
		}
		hours, charge = hours+step, math.Min(charge+rate*step, 1)
		for b, r := range rates {
			opt.BankCharge[b] = math.Min(math.Max(opt.BankCharge[b]+r*step, 0), 1)
		}
	}
	return math.Inf(1)
}
