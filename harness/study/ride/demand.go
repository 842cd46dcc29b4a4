package ride

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// demand is the current of everything but battery and charging system over the
// voltage of the posts, in one state of switches. The network is solved with the
// posts held at multiples of a step, only those that are asked for; between them
// the current runs in a straight line. For a constant-power load the line is off
// by at most (step/2V)², one in fifty thousand at 12 V; a relay that pulls in or
// lets go shows as a ramp of one step.
type demand struct {
	plan      *solve.Plan
	situation *design.Situation
	step      float64
	average   func(*circuit.Branch) float64 // of each load over the leg
	pulled    func(*circuit.Branch) bool    // coils that had pulled in before; nil = none
	known     map[int]float64
	trouble   map[int]string // what the network could not do at a voltage
	last      span           // where the search for a voltage mostly stays
}

// span is the current at two multiples of the step that follow each other.
type span struct {
	low, from, to float64 // low is the first multiple
}

func newDemand(plan *solve.Plan, leg *design.Situation, average func(*circuit.Branch) float64, step float64) *demand {
	return &demand{plan: plan, step: step, last: span{low: math.NaN()}, known: map[int]float64{}, trouble: map[int]string{},
		situation: leg, average: average}
}

// SituationOf is a leg as a situation.
func SituationOf(leg *design.Leg) *design.Situation {
	s := &design.Situation{Name: "leg", Key: leg.Key, EngineRPM: leg.EngineRPM, On: leg.On, With: leg.With, As: leg.As, Pos: leg.Pos}
	if leg.As != nil {
		s.Closed, s.Held, s.Waiting, s.Set, s.Reversed, s.Derived = leg.As.Closed, leg.As.Held, leg.As.Waiting, leg.As.Set, leg.As.Reversed, leg.As.Derived
		s.Sun, s.SunShare, s.Shore = leg.As.Sun, leg.As.SunShare, leg.As.Shore
	}
	return s
}

// at is the current at a voltage.
func (d *demand) at(volts float64) float64 {
	low := math.Floor(volts / d.step)
	part := volts/d.step - low
	if part == 0 {
		return d.solved(int(low))
	}
	if low != d.last.low {
		d.last = span{low, d.solved(int(low)), d.solved(int(low) + 1)}
	}
	return d.last.from + part*(d.last.to-d.last.from)
}

// solved is the current at a multiple of the step.
func (d *demand) solved(k int) float64 {
	if a, ok := d.known[k]; ok {
		return a
	}
	opt := solve.Options{BatteryV: float64(k) * d.step, BatteryOhm: 1e-6, NoCharging: true, LoadFactor: d.average, Pulled: d.pulled}
	s := d.plan.Network(d.situation, opt).Solution()
	if s.Status != solve.Converged {
		d.trouble[k] = fmt.Sprintf("with %.2f V at the posts: %s", opt.BatteryV, s.Trouble())
		// Loads that are starved count with the current of their fold.
		opt.AcceptFolded = true
		s = d.plan.Network(d.situation, opt).Solution()
	}
	d.known[k] = s.BatteryA
	return s.BatteryA
}

// troubleAt is what the network could not do near a voltage; "" = nothing.
func (d *demand) troubleAt(volts float64) string {
	return d.trouble[int(math.Round(volts/d.step))]
}
