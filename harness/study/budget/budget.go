// Package budget sets what the charging system gives against what the vehicle
// and its accessories take, per situation and over engine speed. It reads
// solutions; it judges nothing and draws nothing.
package budget

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Budget is the charging balance of a design.
type Budget struct {
	Lines       []*Line         // one per situation with the engine running or the key on, in design order
	KeyOff      []*Line         // one per situation with the key off and something on, in design order
	Output      []Point         // charging current over engine speed, ready to draw
	Further     []Further       // alternators that no line counts
	VehicleA    float64         // the vehicle's own loads that draw whenever the engine runs, duty counted, at regulated voltage
	Parked      []BankLine      // what the further batteries give with the key off
	Left        *solve.Solution // where StandbyA is from; nil = it has no operating point
	StandbyA    float64         // drawn from the battery with the key off, worst case
	Start       battery.Start   // what a start of the engine takes
	StartBackAh float64         // what has to go into the battery to give a start back; NaN = not known
	StandbyDays float64         // until the battery no longer starts the engine, self-discharge counted; +Inf when nothing is lost
}

// Point is a current at an engine speed.
type Point struct{ RPM, CurrentA float64 }

// Line is the balance of one situation.
type Line struct {
	Situation  *design.Situation
	OutputA    float64 // available at its engine speed
	CutOff     bool    // nothing of it reaches the battery: its cable is open or blocked, or it holds less than the battery; OutputA is 0
	VehicleA   float64
	AccessoryA float64
	SpareA     float64 // OutputA - VehicleA - AccessoryA; negative = the regulated voltage is not held
	// LikelyA is the demand as is likely: VehicleA and AccessoryA and the root of the
	// sum of the squares of what the tolerance of each load's power adds.
	LikelyA      float64
	ReturnHours  float64 // until a start of the engine is given back out of SpareA; +Inf = never, NaN = not known
	BreakEvenRPM float64 // lowest speed at which the output covers the demand; NaN = none
	// Where a full battery meets output and loads, each at its average: the
	// voltage of the posts, the current out of the battery (negative = it is
	// charged), and how long that goes on down to its start reserve, +Inf when it
	// gives nothing. Below the regulated voltage loads that keep their power take
	// more, others less, so that the battery gives more or less than is short.
	BusV         float64
	BatteryA     float64
	BatteryHours float64
	PeakA        float64 // out of a full battery with all that is on drawing at once
	Opens        bool    // its protection lets less through: it switches it off, and BatteryHours are not to be had
	Banks        []BankLine
	Usable       bool // the situation's solution converged
	// Mean is where BusV and BatteryA are from, Held where VehicleA and AccessoryA are:
	// each load at its average, the posts at the regulated voltage. Draws are those of Held. Where the sun shines for
	// a part of the day Mean is the night and Day the sun; nil elsewhere.
	Mean, Day, Held *solve.Solution
	Draws           []*circuit.Branch

	evenAtIdle bool // idle covers the demand already, or the lowest known speed
}

// BreaksEvenAt is the break-even speed in words.
func (l *Line) BreaksEvenAt() string {
	switch {
	case !l.Usable, l.Situation.EngineRPM == 0:
		return "–"
	case math.IsNaN(l.BreakEvenRPM):
		return "at no speed"
	case l.evenAtIdle:
		return "idle"
	}
	return quantity.Plain(math.Round(l.BreakEvenRPM), quantity.Speed)
}
