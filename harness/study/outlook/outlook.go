// Package outlook answers what a reader asks who ticks what is on: the charging output against
// the demand, how long the battery covers what is short, the volts at each load, how far fuses
// and wires are loaded, what may run together and what to switch off first. A state begins as one of the
// design's situations or legs, and differs from it by what hands do. It is solved as any
// situation is: the balance is that of package budget, the figures of loads, fuses and wires
// those of package corner, the sets and the order of shedding those of package together.
package outlook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/ride"
	"fusewright/harness/study/together"
)

// Planner answers for one circuit. It is read-only once made, and may be shared.
type Planner struct {
	Circuit  *circuit.Circuit
	Starts   []*Start   // situations in design order, then the legs of rides
	Controls []*Control // in the order of the design's sections

	set    *corner.Set
	budget *budget.Budget
	hands  *together.Plan // of what the engine charges
	every  *together.Plan // of all batteries
	plan   *solve.Plan
}

// Start is what a state begins as.
type Start struct {
	ID    string
	Title string // "night cruise", "town with idling, leg 2"
	State State

	situation *design.Situation
}

// State is what a reader asks about.
type State struct {
	Start       string  // its ID
	KeyOn       bool    // the ignition key
	SpeedPerMin float64 // of the engine; 0 = stopped, and with the key off it is
	AirC        float64 // and the battery as warm as it; places in the design have their own temperatures
	ParkedH     float64 // how long the machine then stands, everything off, from a full battery
	Charge      float64 // of the first battery, 0..1
	// Set are the controls that differ from the start, by ID: "on", "off", or a position.
	Set map[string]string
}

// New makes a planner from a circuit's solutions. It follows each ride once.
func New(c *circuit.Circuit, set *corner.Set, b *budget.Budget) *Planner {
	p := &Planner{Circuit: c, set: set, budget: b, plan: solve.Prepare(c), hands: together.Weigh(c, set.Solutions(), b), every: together.Hands(c)}
	p.Controls = controlsOf(c)
	for _, s := range c.Design.Situations {
		p.start(OfSituation(s), s.Name, s, State{})
	}
	for _, r := range c.Design.Rides {
		done, err := ride.Simulate(c, r, ride.Options{Tolerance: quickTolerance})
		for i, leg := range r.Legs {
			s := ride.SituationOf(leg)
			s.LastsS = leg.Lasts.Value
			from := State{}
			if err == nil && i < len(done.Legs) {
				from.AirC, from.Charge = done.Legs[i].BatteryC, done.Legs[i].FromCharge
			}
			title := fmt.Sprintf("%s, leg %d", r.Name, i+1)
			s.Name = title
			p.start(OfLeg(r, i), title, s, from)
		}
	}
	return p
}

// OfSituation and OfLeg are the IDs of starts.
func OfSituation(s *design.Situation) string { return "situation " + s.Name }

// OfLeg counts legs from 0.
func OfLeg(r *design.Ride, leg int) string { return fmt.Sprintf("ride %s %d", r.Name, leg+1) }

// quickTolerance is the error of charge in a step of a ride of which the beginnings of legs
// are wanted, no picture.
const quickTolerance = 1e-4

func (p *Planner) start(id, title string, s *design.Situation, from State) {
	from.Start, from.KeyOn, from.SpeedPerMin = id, s.Key == design.KeyOn, s.EngineRPM
	if from.Charge == 0 {
		from.Charge, from.AirC = 1, battery.RatedC
	}
	from.Set = map[string]string{}
	p.Starts = append(p.Starts, &Start{ID: id, Title: title, State: from, situation: s})
}

// Limits of what can be asked.
const (
	mostSpeed           = 30_000
	leastAirC, mostAirC = -60.0, 80.0
	mostParkedH         = 5 * 365 * 24.0
	mostSet             = 2000
)

// Check says what of a state cannot be; nil = nothing.
func (p *Planner) Check(s State) error {
	within := func(what string, v, low, high float64) error {
		if v >= low && v <= high {
			return nil
		}
		number := func(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
		return fmt.Errorf("%s: %s (expected %s to %s)", what, number(v), number(low), number(high))
	}
	for _, err := range []error{within("engine speed", s.SpeedPerMin, 0, mostSpeed), within("air", s.AirC, leastAirC, mostAirC),
		within("hours parked", s.ParkedH, 0, mostParkedH), within("charge", s.Charge, 0, 1)} {
		if err != nil {
			return err
		}
	}
	if len(s.Set) > mostSet {
		return fmt.Errorf("more than %d controls set", mostSet)
	}
	if p.startOf(s.Start) == nil {
		return fmt.Errorf("no situation or leg is %q", short(s.Start))
	}
	for id, word := range s.Set {
		c := p.Control(id)
		if c == nil {
			return fmt.Errorf("nothing is switched by %q", short(id))
		}
		if !c.has(word) {
			return fmt.Errorf("%s is not set to %q (expected %s)", c.Title, short(word), strings.Join(c.Words, ", "))
		}
	}
	return nil
}

func short(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}

func (p *Planner) startOf(id string) *Start {
	for _, s := range p.Starts {
		if s.ID == id {
			return s
		}
	}
	return nil
}

// batteryOf is what the solver takes for the first battery in a state; none of it at the
// temperature and charge at which all other figures of the program count.
func (p *Planner) batteryOf(s State) (opt solve.Options) {
	if s.AirC != battery.RatedC {
		opt.BatteryK = s.AirC - battery.RatedC
	}
	opt.Discharged = 1 - s.Charge
	return opt
}

// hoursLeft is how long the first battery gives a current down to what still starts the
// engine; +Inf when it gives nothing, NaN without a capacity.
func (p *Planner) hoursLeft(s State, amps float64) float64 {
	if !(amps > 0) {
		return math.Inf(1)
	}
	b := battery.Of(p.Circuit.Design)
	if b == nil {
		return math.NaN()
	}
	return 24 * b.DaysToNoStart(amps, s.Charge, s.AirC)
}
