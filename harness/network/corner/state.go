package corner

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
)

// State is one of the states a design is solved in.
type State int

// The states, see the package's text.
const (
	Nominal State = iota
	Weak
	High
	Fresh
)

// Corners are the states other than nominal.
var Corners = []State{Weak, High, Fresh}

// String says a state in words.
func (s State) String() string {
	switch s {
	case Nominal:
		return "nominal"
	case Weak:
		return "weak source, aged contacts"
	case High:
		return "high source, aged contacts"
	case Fresh:
		return "high source, new contacts"
	}
	return "unknown state"
}

// options are what the solver takes for a state of a design, given the result of
// the situation at nominal (for Nominal itself: nil).
func (t *Tolerances) options(d *design.Design, s State, nominal *warm.Result) solve.Options {
	opt := solve.Options{}
	if s == Nominal {
		return opt
	}
	opt.LoadFactor = t.powerFactor
	if s != Fresh {
		opt.Aged = true
		opt.BranchFactor = func(b *circuit.Branch) float64 { return t.aged(b, nominal) }
	}
	if d == nil {
		return opt
	}
	if regulated := d.Charging.RegulatedV.Value; regulated > 0 {
		if s == Weak {
			opt.RegulatedV = math.Max(regulated-t.RegulatedV, t.LowestV)
		} else {
			opt.RegulatedV = math.Max(regulated, math.Min(regulated+t.RegulatedV, t.HighestV))
		}
	}
	opt.ColdCharging = s != Weak
	if s == Weak {
		t.discharge(d, &opt)
	}
	return opt
}

// discharge takes the battery down to its reserve for starting.
func (t *Tolerances) discharge(d *design.Design, opt *solve.Options) {
	b := battery.Of(d)
	if b == nil || d.Battery.Chemistry == nil {
		return
	}
	charge := d.Battery.Chemistry.StartReserve
	opt.Discharged = 1 - charge
	opt.BatteryV = math.Max(b.OpenCircuitV(charge, battery.RatedC), t.LowestV)
	opt.BatteryOhm = b.Ohm(charge, battery.RatedC)
}
