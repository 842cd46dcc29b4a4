package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/warm"
	"fusewright/harness/review/finding"
)

// allowance is what a wire may carry where it is laid: for good, or for as long as it
// is on.
type allowance struct{ *warm.Laid }

// known tells whether the wire has a limit to compare with, be it zero: a wire
// whose place is as hot as its insulation may carry nothing.
func (a allowance) known() bool { return a.Known }

// textFor is the allowed current in words, beside a current held against it.
func (a allowance) textFor(currentA float64) string {
	switch {
	case a.Nothing():
		return "nothing"
	case a.bare():
		return "next to nothing"
	}
	_, text := quantity.Against(currentA, a.AllowedA, quantity.Current)
	return text + a.timeOn()
}

// timeOn says for how long at a time a wire may carry its allowance; "" = for good.
func (a allowance) timeOn() string {
	if !(a.Pulse.Gain > 1) || a.Pulse.SteadyA >= a.AllowedA {
		return ""
	}
	return timesOn(a.Wire.Branch.TimeOn)
}

// timesOn is " for 1 min every 10 min".
func timesOn(on circuit.TimeOn) string {
	return " for " + duration(on.OnS) + " every " + duration(on.EveryS)
}

// leftOn says how long a current that flows for a time only may be left on.
func (a allowance) leftOn(currentA float64) string {
	if a.timeOn() == "" {
		return ""
	}
	if s := a.HotAfterS(currentA); s > 0 && !math.IsInf(s, 1) {
		return "; left on, it reaches its limit after " + duration(s)
	}
	return ""
}

// bareK is how near the air may be to what a wire's insulation bears with the margin
// before it is called as hot (our choice).
const bareK = 0.5

// bareShare is what neighbours leave of a wire's current at the least before it is called
// nothing (our choice).
const bareShare = 0.01

// bare tells whether the air where the wire is laid leaves nothing for its current, or
// next to nothing.
func (a allowance) bare() bool {
	return a.known() && (a.Nothing() && !(a.HeatA > 0) || a.AmbientC > a.LimitC-bareK)
}

// limitSays is what a limit of next to nothing comes of; "" for another.
func (a allowance) limitSays() string {
	at := "the wire's class less the margin"
	switch {
	case !a.bare() && a.known() && a.BundleShare < bareShare:
		return "the wires beside it alone bring it to its class: it may carry next to nothing"
	case !a.bare():
		return ""
	case a.AmbientC >= a.Wire.Spec.Type.ClassC:
		at = "the wire's class"
	}
	return "the air here is at " + at + ": it may carry nothing"
}

// change is what mends a wire that may carry nothing, where neither a smaller
// fuse nor a thicker wire does; "" for others.
func (a allowance) change() string {
	if a.Nothing() || a.bare() {
		return "use a wire of a higher class, or route it away from the heat: neither a thicker wire nor a smaller fuse helps here"
	}
	return ""
}

// traceA is the current below which a wire that may carry nothing carries
// nothing: the leaks of what is off.
const traceA = 1e-3

// where says what the allowance is for and what it is by the other reckoning:
// "at 45 °C among 6 loaded wires in run ..., by the heat balance (18.8 A; table 19.3 A)".
func (a allowance) where() string {
	text := "at " + celsius(a.AmbientC)
	if a.bare() {
		if a.In != nil && a.AmbientC < a.LimitC-bareK {
			text += fmt.Sprintf(" where the other wires of run %q bring it to %s", a.In.Run.Name, celsius(a.AmbientC+a.Beside.RiseK))
		}
		return text + ": its insulation is good for " + celsius(a.LimitC) + " with the margin"
	}
	if a.In != nil && a.In.Loaded > 1 {
		text += fmt.Sprintf(" among %d loaded wires in run %q", a.In.Loaded, a.In.Run.Name)
	}
	text += ", by the " + a.Governs
	switch {
	case math.IsNaN(a.TableA):
		return text
	case a.Governs == conductor.GovernsTable:
		return text + " (heat balance " + amps(a.HeatA) + ")"
	}
	return text + " (table " + amps(a.TableA) + ")"
}

// numbers are both reckonings of the allowed current.
func (a allowance) numbers() []finding.Number {
	return []finding.Number{{Name: "by heat balance", Value: a.HeatA, Unit: "A"},
		{Name: "by table", Value: a.TableA, Unit: "A"}}
}

// findAllowances rates every wire at the hottest point it meets and in the run
// of its route that reduces it most.
func (f *facts) findAllowances() {
	if f.in.Corners != nil {
		f.laid = f.in.Corners.Model
		return
	}
	f.laid = warm.New(f.c)
}

// allowed is the allowance of a wire.
func (f *facts) allowed(w *circuit.Wire) allowance {
	return allowance{&f.laid.Wires[w.Index]}
}
