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

// The states: nominal, the worst cases, then one for each independent tolerance
// alone at its bound; see the package's text.
const (
	Nominal State = iota
	Weak
	High
	Fresh
	StrongLoads
	AgedContacts
	HotPlaces
	LowSource
	HighSource
	states
)

// Corners are the worst cases: all tolerances at once.
var Corners = []State{Weak, High, Fresh}

// alone are the states with one tolerance at its bound. The source has two, of
// which it has one at a time.
var alone = [][]State{{StrongLoads}, {AgedContacts}, {HotPlaces}, {LowSource, HighSource}}

// Alone are those states, the bounds of one tolerance together.
func Alone() [][]State { return alone }

// moved are the tolerances at their bounds in a state.
type moved struct{ loads, contacts, places, low, high bool }

var movedIn = [states]moved{
	Weak:         {loads: true, contacts: true, places: true, low: true},
	High:         {loads: true, contacts: true, places: true, high: true},
	Fresh:        {loads: true, places: true, high: true},
	StrongLoads:  {loads: true},
	AgedContacts: {contacts: true},
	HotPlaces:    {places: true},
	LowSource:    {low: true},
	HighSource:   {high: true},
}

var stateWords = [states]string{Nominal: "nominal", Weak: "weak source, aged contacts", High: "high source, aged contacts",
	Fresh: "high source, new contacts", StrongLoads: "loads high", AgedContacts: "aged contacts", HotPlaces: "hot places",
	LowSource: "weak source", HighSource: "high source"}

// String says a state in words.
func (s State) String() string {
	if s < 0 || s >= states {
		return "unknown state"
	}
	return stateWords[s]
}

// options are what the solver takes for a state of a design, given the result of
// the situation at nominal (for Nominal itself: nil).
func (t *Tolerances) options(d *design.Design, s State, nominal *warm.Result) solve.Options {
	opt, m := solve.Options{}, movedIn[s]
	if m.loads {
		opt.LoadFactor = t.PowerFactor
	}
	if m.contacts {
		opt.Aged = true
		opt.BranchFactor = func(b *circuit.Branch) float64 { return t.Aged(b, nominal).Factor() }
	}
	if d == nil || !m.low && !m.high {
		return opt
	}
	if regulated := d.Charging.RegulatedV.Value; regulated > 0 {
		if m.low {
			opt.RegulatedV = math.Max(regulated-t.RegulatedV, t.LowestV)
		} else {
			opt.RegulatedV = math.Max(regulated, math.Min(regulated+t.RegulatedV, t.HighestV))
		}
	}
	opt.ColdCharging = m.high
	if m.low {
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
	opt.BanksDischarged = opt.Discharged
	opt.BatteryV = math.Max(b.OpenCircuitV(charge, battery.RatedC), t.LowestV)
	opt.BatteryOhm = b.Ohm(charge, battery.RatedC)
}
