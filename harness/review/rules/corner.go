package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
)

// cornered is a figure at nominal values and in the worst case, in the situation in
// which the corner is worst. Without corners both are the nominal one.
type cornered struct {
	corner.Value
	in *design.Situation // nil = in none
}

// worstCorner takes a figure over the situations with an operating point and
// keeps the one whose corner is greatest (sign 1) or least (sign -1). ok leaves
// situations out.
func (f *facts) worstCorner(sign float64, ok func(*solve.Solution) bool,
	figure func(*solve.Solution) float64, at func(*corner.Set, int) corner.Value) cornered {
	if c := f.in.Corners; c != nil {
		v, i := c.WorstIn(sign, func(i int) bool { return ok(f.in.Solutions[i]) },
			func(i int) corner.Value { return at(c, i) })
		if i < 0 {
			return cornered{}
		}
		return cornered{v, f.in.Solutions[i].Situation}
	}
	var worst cornered
	for _, s := range f.usable {
		if x := figure(s); ok(s) && (worst.in == nil || corner.Beyond(sign*x, sign*worst.Corner)) {
			worst = cornered{corner.Value{Nominal: x, Corner: x}, s.Situation}
		}
	}
	return worst
}

// cornerAmps is the magnitude of a branch's current.
func (f *facts) cornerAmps(b *circuit.Branch) cornered {
	return f.worstCorner(1, func(*solve.Solution) bool { return true },
		func(s *solve.Solution) float64 { return math.Abs(s.Amps(b)) },
		func(c *corner.Set, i int) corner.Value { return c.Amps(i, b) })
}

// ambientRiseK is how much hotter every place is at the corner.
func (f *facts) ambientRiseK() float64 {
	if f.in.Corners == nil {
		return 0
	}
	return f.in.Corners.Hot.AboveK
}

// allowedHot is the allowance of a wire with its places as hot as at the corner.
func (f *facts) allowedHot(w *circuit.Wire) allowance {
	if f.in.Corners == nil {
		return f.allowed(w)
	}
	return allowance{&f.in.Corners.Hot.Wires[w.Index]}
}

// split words a figure of both kinds, "3.30 A at the worst corner (2.40 A at
// nominal)", or the figure alone where the corner is no worse.
func (c cornered) split(print func(float64) string) string {
	return print(c.Corner) + c.said(print)
}

// said is what split adds to the figure at the corner.
func (c cornered) said(print func(float64) string) string {
	if print(c.Nominal) == print(c.Corner) {
		return ""
	}
	return fmt.Sprintf(" in the worst case (%s at nominal)", print(c.Nominal))
}
