// Package ride follows the batteries through a ride: legs of minutes at an engine
// speed with loads on and a temperature, by time steps, to state of charge,
// voltage of the posts and currents over time, and the moment from which the
// engine may not start again. It judges nothing and draws nothing.
//
// Battery, charging system and the vehicle's own loads stand at the posts, so
// all the rest is one current that depends on their voltage alone. That current
// comes from the solved network, once for each tenth of a volt that the ride
// meets (see demand); between, it runs straight. The steps then need no network. With further
// batteries each moment is solved (see network).
//
// Duty counts as an average draw, and what is listed as on counts in each leg at least
// once for as long as it is on at once: the ripple of a load that comes and goes, and
// that its wires lose a little more than at the average, is not seen. The
// charging system gives its hot output throughout.
package ride

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
)

// Point is the state at one moment. With one battery, charging plus battery current is the load
// current; what goes into further batteries is none of it.
type Point struct {
	TimeS     float64 // from the start of the ride
	Charge    float64 // state of charge, 0..1
	Reserve   float64 // state of charge below which starting is not sure, as warm as the battery then is
	BusV      float64 // at the battery posts
	BatteryA  float64 // out of the battery; negative = it is charged
	ChargingA float64 // out of the charging system
	LoadA     float64 // the vehicle's own loads, accessories, coils, on whatever battery
	Banks     []BankPoint
}

// BankPoint is a further battery at one moment.
type BankPoint struct {
	Charge float64
	V      float64 // at its posts; NaN = it is empty and nothing else is there
	A      float64 // out of it; negative = it is charged
}

// BankLeg is what a leg did to a further battery.
type BankLeg struct {
	FromCharge, ToCharge float64
	LowestV, HighestV    float64
	TakenAh, GivenAh     float64
	ColdS                float64 // for so long it would have been charged and was too cold for it
}

// BankRide is what a ride did to a further battery.
type BankRide struct {
	Bank          *design.Bank
	StartCharge   float64
	LowestCharge  float64
	LowestChargeS float64
	EndCharge     float64
	EmptyS        float64 // it gives no more: what it feeds goes out; NaN = never
	Cause         Cause   // why it gives no more
	Why           string  // the same, words behind its name: that it is empty, or that its protection opens
}

// Cause is why a further battery gives no more.
type Cause int

const (
	Gives       Cause = iota
	Empty             // nothing is left in it
	Overcharged       // its protection opens on too high a voltage
	Overloaded        // on too much current
	TooLow            // on too low a voltage
)

// Leg is what one leg of the ride did.
type Leg struct {
	Leg            *design.Leg
	FromS, ToS     float64
	AmbientC       float64
	BatteryC       float64 // of the battery as the leg begins
	AmbientAssumed bool    // neither the leg nor the battery's place gives it: 25 °C
	OutputA        float64 // what the charging system can give
	FromReserve    float64 // start reserve as the leg begins
	StartReserve   float64 // the highest of its moments: the battery cools down or warms up on the way
	StartAh        float64 // taken by the start of the engine as it begins
	FromCharge     float64 // after that
	ToCharge       float64
	LowestV        float64 // of the posts
	HighestV       float64
	TakenAh        float64  // out of the battery
	GivenAh        float64  // into the battery
	Sun            []Sunlit // where it does not shine all the time
	ColdS          float64  // for so long it would have been charged and was too cold for it
	UsedAh         float64  // by all loads
	ChargingAh     float64  // by the charging system
	Banks          []BankLeg
	Trouble        string // what the network could not do, in words; "" = nothing
}

// Result is a ride. Times are in seconds from its start; NaN = never.
type Result struct {
	Ride          *design.Ride
	Points        []Point
	Legs          []*Leg // those that were begun
	LowestCharge  float64
	LowestChargeS float64
	EndCharge     float64
	ColdestC      float64 // of the battery
	ReserveS      float64 // first moment below the start reserve
	EmptyS        float64 // the first battery gives no more: the ride ends here
	Cause         Cause   // why it gives no more
	Why           string  // the same, words behind its name
	Banks         []BankRide
	// StartAh is what a start of the engine takes out of the battery as a leg begins in which it runs after it stood;
	// 0 = not known, or the design's own starter is on in a leg.
	StartAh float64
	Frosts  []Frost
	Caveats []string
	Beside  string // what further alternators give, in words; "" = there are none
	Effort  int    // steps of the solver that it took with further batteries
	GivenUp bool   // it took too many, and ends before its time
}

// EndReserve is the start reserve at the end.
func (r *Result) EndReserve() float64 { return r.Points[len(r.Points)-1].Reserve }

// Starts is how often the engine is started, legs that it runs through counted as
// one.
func (r *Result) Starts() int {
	n, ran := 0, false
	for _, l := range r.Legs {
		runs := running(l.Leg)
		if runs && !ran {
			n++
		}
		ran = runs
	}
	return n
}

// SpareAh is what the charging system has to spare for the battery while the engine
// runs, in all; negative = it gives less than is used.
func (r *Result) SpareAh() float64 {
	sum := 0.0
	for _, l := range r.Legs {
		if running(l.Leg) {
			sum += l.OutputA*(l.ToS-l.FromS)/3600 - (l.ChargingAh + l.TakenAh - l.GivenAh)
		}
	}
	return sum
}

// Options choose the steps. The zero value is the usual choice.
type Options struct {
	// Tolerance is the error of state of charge allowed in one step; 0 = 2e-7,
	// which keeps rides of a day within 1e-5.
	Tolerance float64
	// VoltStep is the spacing of solved voltages of a 12 V system; 0 = 0.1 V.
	VoltStep float64
	// Closed are contacts held closed throughout.
	Closed []*circuit.Branch
	// ToReserve ends the ride where the first battery no longer starts the engine.
	ToReserve bool
	// Average is how much of what each branch draws counts; nil = its average over the leg.
	Average func(*circuit.Branch) float64
}

const (
	usualTolerance = 2e-7
	usualVoltStep  = 0.1
	unknownC       = 25.0 // temperature of the battery when nothing gives it, as the budget's

	// Coarse is a tolerance that keeps charges within a thousandth, in far fewer steps.
	Coarse = 1e-5
)

// Simulate takes a circuit through a ride, in coarse steps where fine ones take too many: near the volts
// at which a charger stops, what it gives bends all the way down.
func Simulate(c *circuit.Circuit, r *design.Ride, opt Options) (*Result, error) {
	result, err := simulate(c, r, opt)
	if err != nil || !result.GivenUp || opt.Tolerance >= Coarse {
		return result, err
	}
	opt.Tolerance = Coarse
	coarse, err := simulate(c, r, opt)
	if err != nil || coarse.GivenUp && ended(coarse) <= ended(result) {
		return result, err
	}
	coarse.Effort += result.Effort
	coarse.Caveats = append(coarse.Caveats, "the ride is followed in coarse steps: charges are within 0.1 %")
	return coarse, nil
}

// ended is until when a ride was followed.
func ended(r *Result) float64 { return r.Legs[len(r.Legs)-1].ToS }

func simulate(c *circuit.Circuit, r *design.Ride, opt Options) (*Result, error) {
	bat := battery.Of(c.Design)
	if bat == nil {
		return nil, errors.New("a ride needs the battery's capacity, which the design does not give")
	}
	if len(r.Legs) == 0 {
		return nil, fmt.Errorf("ride %q has no legs", r.Name)
	}
	if opt.Tolerance == 0 {
		opt.Tolerance = usualTolerance
	}
	if opt.VoltStep == 0 {
		opt.VoltStep = usualVoltStep
	}
	s := &simulation{c: c, bat: bat, first: storeOf(&c.Design.Battery, c.Design.NominalV()), opt: opt, plan: solve.Prepare(c), charge: r.StartCharge.Value, banks: banksOf(c, r),
		result: &Result{Ride: r, ReserveS: math.NaN(), EmptyS: math.NaN(), LowestCharge: math.Inf(1), ColdestC: math.Inf(1)}}
	if !slices.ContainsFunc(r.Legs, starterOn) {
		s.result.StartAh = battery.StartOf(c.Design).Ah()
	}
	for _, b := range s.banks {
		s.result.Banks = append(s.result.Banks, BankRide{Bank: b.source, StartCharge: b.charge, LowestCharge: math.Inf(1), EmptyS: math.NaN()})
	}
	for _, leg := range r.Legs {
		if !s.runLeg(leg) {
			break
		}
	}
	s.result.EndCharge = s.charge
	for i, b := range s.banks {
		s.result.Banks[i].EndCharge = b.charge
	}
	s.result.Frosts = frosts(c.Design, s.result)
	s.result.Caveats = caveats(c.Design, s.result)
	var rpm []float64
	for _, l := range s.result.Legs {
		rpm = append(rpm, l.Leg.EngineRPM)
	}
	s.result.Beside = strings.TrimSpace(budget.BesideAt(budget.FurtherOf(c), ": what the batteries take and give counts with it, output does not.", rpm...))
	return s.result, nil
}

// starterOn tells of a leg in which the design's own starter turns, which counts as any load.
func starterOn(l *design.Leg) bool {
	return slices.ContainsFunc(l.On, (*design.Load).Starts)
}

// caveats says what the result rests on that the design does not give.
func caveats(d *design.Design, r *Result) []string {
	var out []string
	for _, l := range r.Legs {
		if l.AmbientAssumed {
			out = append(out, "where a leg does not give the temperature, 25 °C is assumed with the engine at rest, and where the battery's place gives none")
			break
		}
	}
	if d.Charging.Present() && !d.Charging.HotDerating.Given() && d.Charging.Kind == nil {
		out = append(out, "the design gives no hot derating: the output curve is used as it is, hot or cold")
	}
	if !d.Battery.ResistanceOhm.Given() {
		out = append(out, "the battery's resistance is assumed from its chemistry and capacity")
	}
	if len(r.Banks) < len(d.Batteries) {
		out = append(out, "further batteries without a capacity are not followed")
	}
	if len(r.Banks) > 0 {
		out = append(out, "all batteries are as warm as the first one")
	}
	if len(d.VehicleLoads) == 0 {
		out = append(out, "the design gives no vehicle loads: the "+d.Spoken().Noun+" itself draws nothing here")
	}
	return out
}

// newLeg is what is known of a leg before it runs.
func (s *simulation) newLeg(leg *design.Leg) *Leg {
	l := &Leg{Leg: leg, FromS: s.timeS, ToS: s.timeS, FromCharge: s.charge, ToCharge: s.charge,
		LowestV: math.Inf(1), HighestV: math.Inf(-1)}
	d := s.c.Design
	switch at := d.Battery.At; {
	case leg.AmbientC.Given():
		l.AmbientC = leg.AmbientC.Value
	case at != nil && at.AmbientC.Given() && (running(leg) || at.AmbientC.Value <= unknownC):
		l.AmbientC = at.AmbientC.Value
	default: // what a place has at most it has with the engine warm, and not all night
		l.AmbientC, l.AmbientAssumed = unknownC, true
	}
	l.BatteryC = s.fromC(l.AmbientC)
	if running(leg) {
		l.OutputA = charging.OutputA(d, leg.EngineRPM)
	}
	for _, b := range s.banks {
		l.Banks = append(l.Banks, BankLeg{FromCharge: b.charge, ToCharge: b.charge, LowestV: math.Inf(1), HighestV: math.Inf(-1)})
	}
	l.FromReserve = s.bat.StartReserve(l.BatteryC)
	l.StartReserve = l.FromReserve
	if s.charge < l.FromReserve && running(leg) && s.standing() {
		l.Trouble = "the engine may not start: the charge is below the start reserve; the ride goes on as if it did"
	}
	if running(leg) && s.standing() {
		l.StartAh = s.result.StartAh
		s.charge = math.Max(s.charge-l.StartAh/s.bat.CapacityAh(), 0)
		l.FromCharge, l.ToCharge = s.charge, s.charge
	}
	return l
}

// Runs tells whether the engine runs in a leg.
func (l *Leg) Runs() bool { return running(l.Leg) }

func running(l *design.Leg) bool { return l.Key == design.KeyOn && l.EngineRPM > 0 }

// standing tells whether the engine stood still until now.
func (s *simulation) standing() bool {
	n := len(s.result.Legs)
	return n == 0 || !running(s.result.Legs[n-1].Leg)
}
