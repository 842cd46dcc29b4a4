// Package together says which accessories may run at once: for each situation
// with the engine running, all largest choices that the charging system carries,
// and what to switch off where the design asks for more. It counts by current at
// the battery posts, at the regulated voltage, duty included.
package together

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
)

// MostSets is how many sets a choice holds at most: all of 20 like accessories
// (184 756 at the worst) and some more.
const MostSets = 1 << 18

// Item is an accessory.
type Item struct {
	Load     *design.Load
	CurrentA float64 // at the posts, regulated voltage, duty counted
	Rank     int     // 1 = given up last
	Stated   bool    // Rank is the design's
}

// Plan is the answer for a design.
type Plan struct {
	Items   []*Item // what is given up last first; bit i of a Set is Items[i]
	Choices []*Choice
	Why     string // what stands in the way of an answer; "" = nothing
}

// Choice is what may run together in one situation.
type Choice struct {
	Name      string
	Situation *design.Situation // nil for idle and cruise in general
	EngineRPM float64
	OutputA   float64 // of the charging system, hot
	BaseA     float64 // the vehicle's own and the relay coils
	CapacityA float64 // left for accessories; below zero = the vehicle alone asks too much
	Sets      []Set   // every largest choice, most important members first
	Complete  bool    // Sets holds all of them

	// Of a named situation: what it has on, what is missing, and what to switch
	// off for it, first thing first, never a critical load. UncoveredA is what
	// stays missing then.
	On         []*Item
	OverdrawA  float64
	SwitchOff  []*Item
	UncoveredA float64
}

// Members are the items of a set, in order of importance.
func (p *Plan) Members(s Set) []*Item {
	var out []*Item
	for i, item := range p.Items {
		if i < MostItems && s.Has(i) {
			out = append(out, item)
		}
	}
	return out
}

// Compute finds what may run together at idle, at cruise and in each situation
// of a budget with the engine running.
func Compute(c *circuit.Circuit, sols []*solve.Solution, b *budget.Budget) *Plan {
	p := &Plan{}
	if !c.Design.Charging.Present() {
		p.Why = "the design has no charging section"
		return p
	}
	coilA := p.weigh(c)
	if len(p.Items) > MostItems {
		p.Why = "more than 64 accessories: sets are not listed"
	}
	p.general(c.Design, b, coilA)
	for _, l := range b.Lines {
		if l.Usable && l.Situation.EngineRPM > 0 {
			p.named(l, solutionOf(sols, l.Situation), coilA)
		}
	}
	p.findSets()
	return p
}

// weigh finds the current of every accessory, all on at the regulated voltage,
// and what the relay coils take then.
func (p *Plan) weigh(c *circuit.Circuit) (coilA float64) {
	d := c.Design
	volts := d.Charging.RegulatedV.Value
	s := solve.Solve(c, &design.Situation{Name: "all on", Key: design.KeyOn,
		EngineRPM: d.Charging.CruiseRPM.Or(d.Charging.Output[0].RPM.Value), On: d.Loads},
		solve.Options{BatteryV: volts, BatteryOhm: 1e-6, NoCharging: true})
	drawn := map[*design.Load]float64{}
	for _, b := range c.Branches {
		switch a := s.BranchA[b.Index]; {
		case s.Status != solve.Converged || math.IsNaN(a):
		case b.Load != nil && b.Load.Load != nil && !b.Load.Standby:
			drawn[b.Load.Load] += math.Abs(a)
		case b.OfCoil():
			coilA += math.Abs(a)
		}
	}
	for _, l := range d.Loads {
		item := &Item{Load: l, CurrentA: drawn[l]}
		if item.CurrentA == 0 && l.RatedV > 0 { // not reached in the solution: as rated
			item.CurrentA = l.PowerW / l.RatedV
		}
		item.CurrentA *= l.Duty.Or(1)
		item.Rank, item.Stated = Rank(l)
		p.Items = append(p.Items, item)
	}
	byImportance(p.Items)
	return coilA
}

// general adds idle and cruise, unless the budget has a situation of that name
// and speed.
func (p *Plan) general(d *design.Design, b *budget.Budget, coilA float64) {
	for _, g := range []struct {
		name string
		rpm  design.Quantity
	}{{"idle", d.Charging.IdleRPM}, {"cruise", d.Charging.CruiseRPM}} {
		if g.rpm.Given() && !slices.ContainsFunc(b.Lines, func(l *budget.Line) bool {
			return l.Usable && l.Situation.Name == g.name && l.Situation.EngineRPM == g.rpm.Value
		}) {
			p.add(&Choice{Name: g.name, EngineRPM: g.rpm.Value, BaseA: b.VehicleA + coilA,
				OutputA: charging.OutputA(d, g.rpm.Value)})
		}
	}
}

func (p *Plan) add(c *Choice) {
	c.CapacityA = c.OutputA - c.BaseA
	p.Choices = append(p.Choices, c)
}

// named adds a situation of the budget, with what to switch off.
func (p *Plan) named(l *budget.Line, s *solve.Solution, coilA float64) {
	c := &Choice{Name: l.Situation.Name, Situation: l.Situation, EngineRPM: l.Situation.EngineRPM,
		OutputA: l.OutputA, BaseA: l.VehicleA + coilA}
	p.add(c)
	draws := drawing(s)
	for _, item := range p.Items {
		if draws[item.Load] {
			c.On = append(c.On, item)
		}
	}
	if l.SpareA < 0 {
		c.OverdrawA = -l.SpareA
		c.SwitchOff, c.UncoveredA = giveUp(c.On, c.OverdrawA)
	}
}

func drawing(s *solve.Solution) map[*design.Load]bool {
	on := map[*design.Load]bool{}
	if s == nil {
		return on
	}
	for _, b := range s.Circuit.Branches {
		if b.Load != nil && b.Load.Load != nil && s.LoadOn[b.Index] {
			on[b.Load.Load] = true
		}
	}
	return on
}

func solutionOf(sols []*solve.Solution, at *design.Situation) *solve.Solution {
	for _, s := range sols {
		if s.Situation == at {
			return s
		}
	}
	return nil
}

// findSets fills in the sets; choices of one capacity share theirs.
func (p *Plan) findSets() {
	amps := make([]float64, len(p.Items))
	for i, item := range p.Items {
		amps[i] = item.CurrentA
	}
	done := map[float64]*Choice{}
	for _, c := range p.Choices {
		if same := done[c.CapacityA]; same != nil {
			c.Sets, c.Complete = same.Sets, same.Complete
			continue
		}
		c.Sets, c.Complete = MaximalSets(amps, c.CapacityA, MostSets)
		done[c.CapacityA] = c
	}
}
