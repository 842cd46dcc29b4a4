package ride

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/cranking"
)

// simulation is a ride under way.
type simulation struct {
	c      *circuit.Circuit
	bat    *battery.Battery
	first  store // the same with its protection
	opt    Options
	plan   *solve.Plan
	timeS  float64
	charge float64
	banks  []*bank
	result *Result
	at     posts   // of the leg under way
	lastV  float64 // of the first battery's posts, when the leg before ended
	after  *solve.Solution
}

// posts tell what all batteries have at states of charge, in one leg.
type posts interface {
	// balance finds a moment; ok is false when the loads ask for more than the sources give at any
	// voltage that matters.
	balance(charge float64, banks []float64) (p Point, ok bool)
	troubleAt(volts float64) string // what the network could not do near it; "" = nothing
	moved(p Point, celsius float64) bool
	take(p Point, celsius float64) (turned bool)
	light(sun bool)       // whether the sun shines from now on
	warm(celsius float64) // how warm the batteries are from now on
}

const (
	pointsPerLeg = 60      // at least, so that a picture shows the bends
	leastStepS   = 0.05    // where a charge limit bends the curve
	mostSteps    = 200_000 // a leg of the longest length needs far fewer
	eventStepS   = 5.0     // how nearly a relay's move is placed: shorter than their delays
	mostEffort   = 200_000 // steps of the solver in a ride: some twenty times those of a day with two batteries
	usualLegs    = 20      // that a ride has: as many more take as much more
	eventGrows   = 1.5     // the same for each one more: what moves on and on is not followed for ever
)

// runLeg takes the batteries through a leg, its days and nights. It tells whether the ride goes on.
func (s *simulation) runLeg(leg *design.Leg) bool {
	l := s.newLeg(leg)
	s.result.Legs = append(s.result.Legs, l)
	s.begin(l)
	spells := spellsOf(l)
	for _, x := range spells {
		s.at.light(x.sun)
		if x.sun && len(spells) > 1 {
			l.Sun = append(l.Sun, Sunlit{s.timeS, s.timeS + x.lastsS})
		}
		if !s.runSpell(l, x.lastsS) {
			return false
		}
		if s.spent() || s.opt.ToReserve && s.result.ReserveS >= 0 {
			break
		}
	}
	if s.spent() {
		s.result.GivenUp, l.Trouble = true, "not followed further: relays or chargers switch in turn, or find no current to settle at"
	}
	l.ToS, l.ToCharge = s.timeS, s.charge
	s.end(l)
	return !s.result.GivenUp && (!s.opt.ToReserve || math.IsNaN(s.result.ReserveS))
}

// runSpell takes the batteries through a time of a leg by Heun's method: the slope at the
// start and at the end that it leads to, averaged; half their difference is the
// error of the step and sets the next one. False = the ride ends in it.
func (s *simulation) runSpell(l *Leg, length float64) bool {
	most, event := l.Leg.Lasts.Value/pointsPerLeg, eventStepS
	if len(s.banks) > 0 && s.opt.Tolerance > usualTolerance { // not for a picture
		most = l.Leg.Lasts.Value / 12
	}
	step := math.Min(most, 1)
	celsius := s.batteryC(l, 0)
	s.at.warm(celsius)
	now, ok := s.at.balance(s.charge, chargesOf(s.banks))
	if s.at.take(now, celsius) {
		now, ok = s.at.balance(s.charge, chargesOf(s.banks))
	}
	s.note(l, now, ok)
	if s.switchesOff(l, now, celsius) {
		return false
	}
	for n, left := 0, length; left > 0 && n < mostSteps && !s.spent(); n++ {
		step = math.Min(step, left)
		celsius = s.batteryC(l, step)
		s.at.warm(celsius)
		next, okNext, off := s.try(now, celsius, step)
		cause, _ := s.trips(next, celsius)
		moved := s.at.moved(next, celsius) || cause != Gives
		if moved && step > event {
			step = math.Max(step/4, event)
			continue
		}
		if off > s.opt.Tolerance && step > leastStepS && !moved {
			step = math.Max(step*shrink(off, s.opt.Tolerance), leastStepS)
			continue
		}
		if s.isEmpty(l, now, next) {
			return s.endEmpty(l, now, next, step)
		}
		s.count(l, now, next, step)
		s.countCold(l, now, next, celsius, step)
		left -= step
		s.timeS += step
		s.charge = next.Charge
		s.at.take(next, celsius)
		s.note(l, next, okNext)
		if s.switchesOff(l, next, celsius) {
			return false
		}
		now = next
		step = math.Min(step*shrink(off, s.opt.Tolerance), most)
		if moved { // what has moved makes a moment of its own
			event *= eventGrows
			now, _ = s.at.balance(s.charge, chargesOf(s.banks))
			step = math.Min(1, most)
		}
		if s.opt.ToReserve && s.result.ReserveS >= 0 {
			break
		}
	}
	return true
}

// spent tells that a ride has taken too much.
func (s *simulation) spent() bool {
	return s.result.Effort > mostEffort*max(1, len(s.result.Ride.Legs)/usualLegs)
}

// begin prepares a leg.
func (s *simulation) begin(l *Leg) {
	leg, average, pulled := s.beginStart(l)
	if len(s.banks) > 0 || len(s.opt.Closed) > 0 || SituationOf(l.Leg).Sun > 0 {
		n := s.newNetwork(l)
		n.leg, n.opt.LoadFactor, n.opt.Pulled = leg, average, pulled
		for _, b := range s.opt.Closed {
			n.opt.Changes = append(n.opt.Changes, solve.CloseBranch(b))
		}
		s.at = n
		return
	}
	b := newBus(s.c, s.bat, l, newDemand(s.plan, leg, average, s.opt.VoltStep*s.c.Design.NominalV()/12))
	b.demand.pulled = pulled
	if leg.Cranks() {
		b.floorV *= startFloor
	}
	b.lastV = s.lastV
	s.at = b
}

// startFloor is down to which share of the usual voltage a start is followed: it lasts seconds, and its voltage is wanted all the same.
const startFloor = 0.05

// beginStart is the leg as a situation, what each branch draws in it, and the coils that have pulled in before it. Where a starter of the
// design turns, it draws as much more as the cold asks for, and relays hold as the study of starts has them.
func (s *simulation) beginStart(l *Leg) (*design.Situation, func(*circuit.Branch) float64, func(*circuit.Branch) bool) {
	leg := SituationOf(l.Leg)
	average := s.average(leg, l.Leg)
	if !leg.Cranks() {
		return leg, average, nil
	}
	held, _, pulled := cranking.Begin(s.plan, leg, solve.Options{NoCharging: true, Discharged: 1 - s.charge, BatteryK: l.BatteryC - battery.RatedC})
	times := cranking.Times(l.BatteryC)
	return held, func(b *circuit.Branch) float64 { return average(b) * times(b) }, func(coil *circuit.Branch) bool { return pulled[coil] }
}

// end keeps what the next leg begins with.
func (s *simulation) end(l *Leg) {
	for i, b := range s.banks {
		l.Banks[i].ToCharge = b.charge
	}
	switch x := s.at.(type) {
	case *bus:
		s.lastV = x.lastV
	case *network:
		s.after = x.opt.After
	}
}

func (s *simulation) average(leg *design.Situation, l *design.Leg) func(*circuit.Branch) float64 {
	if s.opt.Average != nil {
		return s.opt.Average
	}
	return solve.AverageDraw(leg, l.Lasts.Value)
}

func chargesOf(banks []*bank) []float64 {
	list := make([]float64, len(banks))
	for i, b := range banks {
		list[i] = b.charge
	}
	return list
}

// rates are how fast the charges change at a moment, the first battery's first.
func (s *simulation) rates(p Point, celsius float64) []float64 {
	list := []float64{s.bat.Rate(p.BatteryA, p.Charge, celsius)}
	for i, b := range s.banks {
		list = append(list, b.Rate(p.Banks[i].A, p.Banks[i].Charge, celsius))
	}
	return list
}

// try makes one step; off is its error.
func (s *simulation) try(now Point, celsius, stepS float64) (next Point, ok bool, off float64) {
	k1 := s.rates(now, celsius)
	to := func(rate func(i int) float64) (Point, bool) {
		banks := make([]float64, len(s.banks))
		for i := range banks {
			banks[i] = notOverfull(now.Banks[i].Charge + rate(i+1)*stepS)
		}
		return s.at.balance(notOverfull(now.Charge+rate(0)*stepS), banks)
	}
	there, _ := to(func(i int) float64 { return k1[i] })
	k2 := s.rates(there, celsius)
	next, ok = to(func(i int) float64 { return (k1[i] + k2[i]) / 2 })
	for i := range k1 {
		off = math.Max(off, math.Abs(k2[i]-k1[i])*stepS/2)
	}
	return next, ok, off
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
	r, celsius := s.result, s.batteryC(l, 0)
	p.TimeS, p.Reserve = s.timeS, s.bat.StartReserve(celsius)
	l.StartReserve, r.ColdestC = math.Max(l.StartReserve, p.Reserve), math.Min(r.ColdestC, celsius)
	r.Points = append(r.Points, p)
	l.LowestV, l.HighestV = math.Min(l.LowestV, p.BusV), math.Max(l.HighestV, p.BusV)
	if p.Charge < r.LowestCharge {
		r.LowestCharge, r.LowestChargeS = p.Charge, p.TimeS
	}
	if math.IsNaN(r.ReserveS) && p.Charge < p.Reserve {
		r.ReserveS = s.crossing(l, p)
	}
	s.noteBanks(l, p)
	if l.Trouble == "" {
		l.Trouble = s.at.troubleAt(p.BusV)
	}
	if !ok && l.Trouble == "" {
		l.Trouble = "the loads ask for more than battery and charging system give at half the system voltage"
	}
}

func (s *simulation) noteBanks(l *Leg, p Point) {
	for i, b := range p.Banks {
		leg, all := &l.Banks[i], &s.result.Banks[i]
		if !math.IsNaN(b.V) {
			leg.LowestV, leg.HighestV = math.Min(leg.LowestV, b.V), math.Max(leg.HighestV, b.V)
		}
		if left := math.Max(b.Charge, 0); left < all.LowestCharge {
			all.LowestCharge, all.LowestChargeS = left, p.TimeS
		}
		if of := s.banks[i]; of.apart != Gives && math.IsNaN(all.EmptyS) {
			all.EmptyS, all.Cause, all.Why = p.TimeS, of.apart, of.why
		}
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
	spare, short := before.Charge-before.Reserve, p.Reserve-p.Charge
	if spare <= 0 {
		return before.TimeS
	}
	part := spare / (spare + short)
	return before.TimeS + part*(p.TimeS-before.TimeS)
}

// count adds a step to the sums of its leg.
func (s *simulation) count(l *Leg, a, b Point, stepS float64) {
	h := stepS / 3600
	taken := func(a, b float64) float64 { return (math.Max(a, 0) + math.Max(b, 0)) / 2 * h }
	l.TakenAh += taken(a.BatteryA, b.BatteryA)
	l.GivenAh += taken(-a.BatteryA, -b.BatteryA)
	for i := range l.Banks {
		l.Banks[i].TakenAh += taken(a.Banks[i].A, b.Banks[i].A)
		l.Banks[i].GivenAh += taken(-a.Banks[i].A, -b.Banks[i].A)
	}
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
		s.at.take(next, s.batteryC(l, 0))
		s.note(l, next, true)
	}
	s.result.Cause, s.result.Why = Empty, s.first.emptyWhy(s.batteryC(l, 0))
	return s.over(l)
}

// over ends the ride in a leg.
func (s *simulation) over(l *Leg) bool {
	s.result.EmptyS = s.timeS
	s.end(l)
	l.ToS, l.ToCharge = s.timeS, s.charge
	return false
}

// trips is why the first battery's protection opens; Gives = it does not.
func (s *simulation) trips(p Point, celsius float64) (Cause, string) {
	cause, why := s.first.opens(BankPoint{Charge: p.Charge, V: p.BusV, A: p.BatteryA}, celsius)
	if cause == Empty { // which is placed between two moments
		cause = Gives
	}
	return cause, why
}

// switchesOff closes the ride where the first battery's protection opens: all that it feeds goes out.
func (s *simulation) switchesOff(l *Leg, p Point, celsius float64) bool {
	cause, why := s.trips(p, celsius)
	if cause == Gives {
		return false
	}
	s.result.Cause, s.result.Why = cause, why
	s.over(l)
	return true
}
