package budget

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/library"
)

// Compute makes the balance of every situation in which something is on, and the
// drain of the machine left alone. Demand is counted at the regulated voltage, duty included:
// what the charging system must give for the battery to be left in peace. A
// situation that did not converge gives a line without numbers.
func Compute(c *circuit.Circuit, sols []*solve.Solution) *Budget {
	d := c.Design
	b := &Budget{VehicleA: vehicleA(c), Output: outputCurve(&d.Charging), Further: FurtherOf(c), Start: battery.StartOf(d)}
	b.StartBackAh = startBackAh(d, b.Start)
	tolerances := corner.TolerancesOf(d)
	for _, s := range sols {
		switch {
		case s.Situation.Key == design.KeyOn:
			b.Lines = append(b.Lines, b.Balance(s, tolerances, solve.Options{}))
		case !IsParked(s.Situation):
			b.KeyOff = append(b.KeyOff, b.Balance(s, tolerances, solve.Options{}))
		}
	}
	parked := Parked(c, sols)
	if parked != nil {
		b.Left = averaged(parked, solve.Options{})
		b.StandbyA = math.Max(0, b.Left.BatteryA)
		if d.HasBanks() {
			b.Parked = banksOf(b.Left, nil, parked)
		}
	}
	b.StandbyDays = StandbyDays(d, b.StandbyA)
	return b
}

// OutputBasis says in words what the output counts with.
func OutputBasis(d *design.Design) string {
	switch h, kind := d.Charging.HotDerating, d.Charging.Kind; {
	case !d.Charging.Present():
		return "The design gives no charging output."
	case h.Given():
		return "Output is for the engine speed named, less " + quantity.Plain(h.Value, quantity.Share) + " hot derating."
	case kind != nil:
		return "Output is for the engine speed named, less " + quantity.Plain(kind.HotLost, quantity.Share) + ", as usual of a hot " + kind.Name + "."
	}
	return "Output is for the engine speed named, as stated: the design gives no hot derating, and a hot generator " +
		"may give less."
}

// MostShorted is the situation with the engine running in which a shunt regulator has most to
// short; nil where none does, or there is no such regulator.
func (b *Budget) MostShorted(d *design.Design) (most *Line) {
	if !d.Charging.Kind.Shunts() {
		return nil
	}
	for _, l := range b.Lines {
		if l.Usable && l.SpareA > 0 && l.OutputA > 0 && (most == nil || l.SpareA > most.SpareA) {
			most = l
		}
	}
	return most
}

// ShuntBasis says in words what a shunt regulator does with what is to spare; "" = nothing.
func (b *Budget) ShuntBasis(d *design.Design) string {
	l := b.MostShorted(d)
	if l == nil {
		return ""
	}
	return " What is to spare the shunt regulator shorts, at most " + quantity.Format(l.SpareA, quantity.Current) + ", in " + l.Situation.Name + ": " +
		quantity.Format(charging.ShuntW(&d.Charging, l.SpareA), quantity.Power) + " of heat in it; the winding carries its full current whatever is on, " +
		"and what a load drew that goes, such as filament lamps for LED, is shorted too."
}

// curveSteps is how finely the output curve is drawn between two points.
const curveSteps = 8

// outputCurve is the charging output over engine speed.
func outputCurve(of *design.Charging) []Point {
	var curve []Point
	rpm, amps := charging.Of(of).Points(curveSteps)
	for i := range rpm {
		curve = append(curve, Point{rpm[i], amps[i]})
	}
	return curve
}

// cutOffShare is the share of its output below which a charging system is cut off from a battery that gives; our choice.
const cutOffShare = 1e-3

// Balance is the balance of one situation, with the battery as the options have it; hours count from
// full all the same.
func (b *Budget) Balance(s *solve.Solution, t *corner.Tolerances, opt solve.Options) *Line {
	d := s.Circuit.Design
	l := &Line{Situation: s.Situation, OutputA: charging.OutputA(d, s.Situation.EngineRPM),
		Usable: s.Status == solve.Converged, BreakEvenRPM: math.NaN(), BatteryHours: math.Inf(1)}
	if !l.Usable {
		nan := math.NaN()
		l.VehicleA, l.AccessoryA, l.SpareA, l.BatteryHours, l.BusV, l.BatteryA = nan, nan, nan, nan, nan, nan
		l.LikelyA, l.ReturnHours, l.PeakA = nan, nan, nan
		return l
	}
	mean, lit := averaged(s, opt), s.Situation.Sunlit()
	if lit > 0 && lit < 1 { // days and nights: mean is the night
		l.Day = averaged(s, inTheSun(s, opt))
		opt.Night = true
		mean = averaged(s, opt)
	}
	l.BusV, l.BatteryA, l.PeakA = busV(mean), mean.BatteryA, s.BatteryA
	if bat := battery.Of(d); l.Day != nil && bat != nil {
		l.BatteryA = (1-lit)*bat.WorthA(l.BatteryA) + lit*bat.WorthA(l.Day.BatteryA)
	}
	if l.BatteryA > 0 {
		l.BatteryHours = 24 * StandbyDays(d, l.BatteryA)
		l.Opens = opens(&d.Battery, max(l.BatteryA, l.PeakA))
	}
	l.Banks = banksOf(mean, l.Day, s)
	if l.CutOff = l.BatteryA > 0 && mean.ChargingA < cutOffShare*l.OutputA; l.CutOff {
		l.OutputA = 0
	}
	regulated := held(s, mean)
	l.Mean, l.Held = mean, regulated
	l.VehicleA, l.AccessoryA, l.Draws = demandA(regulated)
	demand := l.VehicleA + l.AccessoryA
	l.SpareA = l.OutputA - demand
	l.LikelyA = demand + moreA(regulated, t)
	l.ReturnHours = hoursToReturn(d, b.Start, l.SpareA)
	if !l.CutOff {
		l.BreakEvenRPM = charging.BreakEven(d, demand)
	}
	l.evenAtIdle = l.BreakEvenRPM == charging.BreakEven(d, 0)
	return l
}

// averaged is a solution's situation with every accessory at its average and the
// wires as they are in it; the solution itself when that does not converge.
func averaged(s *solve.Solution, opt solve.Options) *solve.Solution {
	opt.LoadFactor = Average(s.Circuit.Design, s.Situation)
	for _, w := range s.Circuit.Wires {
		if ohm := s.Ohm[w.Branch.Index]; !math.IsInf(ohm, 0) {
			opt.Changes = append(opt.Changes, solve.SetOhm(w.Branch, ohm))
		}
	}
	if mean := s.Again(opt); mean.Status == solve.Converged {
		return mean
	}
	return s
}

// held is the average state with the posts at the regulated voltage while the
// engine runs; with the engine stopped, or without a charging system, mean.
func held(s, mean *solve.Solution) *solve.Solution {
	ch := &s.Circuit.Design.Charging
	if s.Situation.EngineRPM == 0 || !ch.Present() {
		return mean
	}
	opt := solve.Options{BatteryV: ch.RegulatedV.Value, BatteryOhm: 1e-6, NoCharging: true}
	if s.Circuit.Stud() != nil {
		opt.BankV = opt.BatteryV
	}
	return averaged(s, opt)
}

// demandA is the current of the vehicle's loads and of the accessories, coils
// included, in an averaged solution, as far as the first battery and the engine feed them; a
// motor that runs backwards takes as much, and is fed at its other end.
func demandA(s *solve.Solution) (vehicle, accessory float64, draws []*circuit.Branch) {
	joined := joinedToFirst(s)
	for _, b := range s.Circuit.Branches {
		switch a := math.Abs(s.BranchA[b.Index]); {
		case math.IsNaN(a), joined != nil && !joined[b.A.Index] && !(b.Load != nil && b.Load.Reverses && joined[b.B.Index]):
		case b.Follows(): // the current of the load before it
		case s.Circuit.ConverterOf(b.A) != nil: // its converter takes it
		case b.Load != nil && b.Load.Vehicle != nil:
			vehicle += a
			draws = append(draws, b)
		case b.Load != nil, b.OfCoil():
			accessory += a
			draws = append(draws, b)
		}
	}
	return vehicle, accessory, draws
}

// joinedToFirst tells, by node index, what the first battery and the engine feed in a solution:
// of further batteries' loads those behind a closed link; nil with one battery.
func joinedToFirst(s *solve.Solution) []bool {
	if !s.Circuit.Design.HasBanks() {
		return nil
	}
	from := []*circuit.Node{s.Circuit.Positive()}
	if stud := s.Circuit.Stud(); stud != nil && s.Situation.EngineRPM > 0 {
		from = append(from, stud)
	}
	return circuit.Reach(s.Circuit, func(b *circuit.Branch) bool { return s.Closed[b.Index] }, from...)
}

// moreA is by how much the demand of an averaged solution is likely to be above it:
// the root of the sum of the squares of what each load's tolerance of power adds.
func moreA(s *solve.Solution, t *corner.Tolerances) float64 {
	sum := 0.0
	for _, b := range s.Circuit.Branches {
		if a := s.BranchA[b.Index]; b.Load != nil && !b.Follows() && s.Circuit.ConverterOf(b.A) == nil && !math.IsNaN(a) {
			more := a * (t.PowerFactor(b) - 1)
			sum += more * more
		}
	}
	return math.Sqrt(sum)
}

// LikelyBasis says in words what the likely demand counts with: which loads draw
// the most that a regulation allows, and how sure that is.
func LikelyBasis(d *design.Design) string {
	text := "The likely demand adds the tolerance of each load's power, by the root of the sum of their squares"
	said := map[library.Source]bool{}
	for _, l := range d.Loads {
		if l.Tolerance.Given() || l.Figure == "highest" || l.MostW <= l.PowerW || said[l.Type.Most.Source] {
			continue
		}
		most := l.Type.Most.Source
		said[most] = true
		document, _, _ := strings.Cut(most.Text, ":")
		text += fmt.Sprintf("; %s and the like count with the maximum their type approval allows, such as %s of %s (%s; %s)",
			l.Type.Name, quantity.Plain(l.MostW, quantity.Power), quantity.Plain(l.PowerW, quantity.Power), document, most.Certainty)
	}
	return text + "."
}

// busV is the voltage at the battery's posts.
func busV(s *solve.Solution) float64 {
	return s.NodeV[s.Circuit.Positive().Index] - s.NodeV[s.Circuit.Negative().Index]
}

// vehicleA is what the vehicle's own loads draw whenever the engine runs, duty
// counted, at the regulated voltage; those of single situations are left out.
func vehicleA(c *circuit.Circuit) float64 {
	d, sum := c.Design, 0.0
	for _, l := range d.VehicleLoads {
		if len(l.In) > 0 {
			continue
		}
		sum += d.VehicleW(l) / d.VehicleV() * l.Duty.Or(1)
	}
	return sum
}
