package ride

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// simulation is a ride under way.
type simulation struct {
	c      *circuit.Circuit
	bat    *battery.Battery
	opt    Options
	plan   *solve.Plan
	timeS  float64
	charge float64
	result *Result
	demand *demand // of the leg under way
	lastV  float64 // of the posts, when it ended
}

const (
	pointsPerLeg = 60      // at least, so that a picture shows the bends
	leastStepS   = 0.05    // where a charge limit bends the curve
	mostSteps    = 200_000 // a leg of the longest length needs far fewer
)

// runLeg takes the battery through a leg by Heun's method: the slope at the
// start and at the end that it leads to, averaged; half their difference is the
// error of the step and sets the next one. It tells whether the ride goes on.
func (s *simulation) runLeg(leg *design.Leg) bool {
	l := s.newLeg(leg)
	s.result.Legs = append(s.result.Legs, l)
	s.demand = newDemand(s.plan, leg, s.opt.VoltStep*s.c.Design.NominalV()/12)
	s.demand.circuit = s.c
	for _, post := range s.c.Posts()[1:] {
		s.demand.links = append(s.demand.links, post.FedBy()...)
	}
	b := newBus(s.c, s.bat, l, s.demand)
	b.lastV = s.lastV
	length := leg.Lasts.Value
	most := length / pointsPerLeg
	step := math.Min(most, 1)
	now, ok := b.balance(s.charge)
	s.note(l, now, ok)
	for n, left := 0, length; left > 0 && n < mostSteps; n++ {
		step = math.Min(step, left)
		b.celsius = s.batteryC(l, step)
		next, okNext, off := s.try(b, now, step)
		if off > s.opt.Tolerance && step > leastStepS {
			step = math.Max(step*shrink(off, s.opt.Tolerance), leastStepS)
			continue
		}
		if s.isEmpty(l, now, next) {
			return s.endEmpty(l, now, next, step)
		}
		s.count(l, now, next, step)
		left -= step
		s.timeS += step
		s.charge = next.Charge
		s.note(l, next, okNext)
		now = next
		step = math.Min(step*shrink(off, s.opt.Tolerance), most)
	}
	l.ToS, l.ToCharge = s.timeS, s.charge
	s.lastV = b.lastV
	return true
}

// try makes one step; off is its error.
func (s *simulation) try(b *bus, now Point, stepS float64) (next Point, ok bool, off float64) {
	k1 := s.bat.Rate(now.BatteryA, now.Charge, b.celsius)
	there, _ := b.balance(notOverfull(now.Charge + k1*stepS))
	k2 := s.bat.Rate(there.BatteryA, there.Charge, b.celsius)
	next, ok = b.balance(notOverfull(now.Charge + (k1+k2)/2*stepS))
	return next, ok, math.Abs(k2-k1) * stepS / 2
}

// notOverfull: a step may end below empty, which is where isEmpty looks, but a
// full battery rises no further.
func notOverfull(q float64) float64 { return math.Min(q, 1) }

// shrink is how much longer the next step may be: the error goes with its square.
func shrink(off, tolerance float64) float64 {
	return math.Min(math.Max(0.9*math.Sqrt(tolerance/math.Max(off, 1e-300)), 0.2), 2)
}

// note records a moment.
func (s *simulation) note(l *Leg, p Point, ok bool) {
	p.TimeS = s.timeS
	r := s.result
	r.Points = append(r.Points, p)
	l.LowestV, l.HighestV = math.Min(l.LowestV, p.BusV), math.Max(l.HighestV, p.BusV)
	if p.Charge < r.LowestCharge {
		r.LowestCharge, r.LowestChargeS = p.Charge, p.TimeS
	}
	if math.IsNaN(r.ReserveS) && p.Charge < l.StartReserve {
		r.ReserveS = s.crossing(l, p)
	}
	l.Shared = l.Shared || !l.Runs() && s.demand.linkA(p.BusV) > SharedA
	if l.Trouble == "" {
		l.Trouble = s.demand.troubleAt(p.BusV)
	}
	if !ok && l.Trouble == "" {
		l.Trouble = "the loads ask for more than battery and charging system give at half the system voltage"
	}
}

// crossing is when the charge passed the reserve on the way to a moment; the
// beginning of the leg when it was below from there on.
func (s *simulation) crossing(l *Leg, p Point) float64 {
	n := len(s.result.Points)
	if n < 2 || p.TimeS <= l.FromS {
		return p.TimeS
	}
	before := s.result.Points[n-2]
	if before.Charge <= l.StartReserve {
		return before.TimeS
	}
	part := (before.Charge - l.StartReserve) / (before.Charge - p.Charge)
	return before.TimeS + part*(p.TimeS-before.TimeS)
}

// count adds a step to the sums of its leg.
func (s *simulation) count(l *Leg, a, b Point, stepS float64) {
	h := stepS / 3600
	l.TakenAh += (math.Max(a.BatteryA, 0) + math.Max(b.BatteryA, 0)) / 2 * h
	l.GivenAh += (math.Max(-a.BatteryA, 0) + math.Max(-b.BatteryA, 0)) / 2 * h
	l.UsedAh += (a.LoadA + b.LoadA) / 2 * h
	l.ChargingAh += (a.ChargingA + b.ChargingA) / 2 * h
}

// isEmpty tells whether a step takes more than is available at this temperature.
func (s *simulation) isEmpty(l *Leg, now, next Point) bool {
	return next.BatteryA > 0 && next.Charge < now.Charge && next.Charge <= s.bat.EmptyCharge(s.batteryC(l, 0))
}

// endEmpty closes the ride where the battery gives no more.
func (s *simulation) endEmpty(l *Leg, now, next Point, stepS float64) bool {
	empty := s.bat.EmptyCharge(s.batteryC(l, 0))
	if now.Charge > empty {
		part := (now.Charge - empty) / (now.Charge - next.Charge)
		s.count(l, now, next, stepS*part)
		s.timeS += stepS * part
		s.charge = empty
		next.Charge = empty
		s.note(l, next, true)
	}
	s.result.EmptyS = s.timeS
	l.ToS, l.ToCharge = s.timeS, s.charge
	return false
}
