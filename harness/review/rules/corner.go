package rules

import (
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
)

// cornered is a figure at nominal values, as it is likely and in the worst case, in
// the situation in which what decides is worst. Without corners all are the
// nominal one.
type cornered struct {
	corner.Value
	in *design.Situation // nil = in none
	by corner.Kind       // the figure that decides
}

// decisive is the figure that decides.
func (c cornered) decisive() float64 { return c.Of(c.by) }

// measure is a figure over the situations, by the kind that decides.
type measure func(by corner.Kind) cornered

// worstCorner takes a figure over the situations with an operating point and
// keeps the one whose figure of a kind is greatest (sign 1) or least (sign -1). ok
// leaves situations out.
func (f *facts) worstCorner(by corner.Kind, sign float64, ok func(*solve.Solution) bool,
	figure func(*solve.Solution) float64, at func(*corner.Set, int) corner.Value) cornered {
	if c := f.in.Corners; c != nil {
		v, i := c.WorstIn(sign, by, func(i int) bool { return ok(c.Solution(i)) },
			func(i int) corner.Value { return at(c, i) })
		if i < 0 {
			return cornered{by: by}
		}
		return cornered{v, c.Solution(i).Situation, by}
	}
	worst := cornered{by: by}
	for _, s := range f.usable {
		if x := figure(s); ok(s) && (worst.in == nil || corner.Beyond(sign*x, sign*worst.Corner)) {
			worst = cornered{corner.Value{Nominal: x, Likely: x, Corner: x}, s.Situation, by}
		}
	}
	return worst
}

// allSolutions are the operating points of the situations, and of those in which a load is
// on by one of its feeds alone.
func (f *facts) allSolutions() []*solve.Solution {
	if c := f.in.Corners; c != nil {
		return c.Every()
	}
	return f.in.Solutions
}

// figureOf measures a figure of a solution, the greatest (sign 1) or the least (sign
// -1) being the worst. ok leaves situations out; nil = none.
func (f *facts) figureOf(sign float64, ok func(*solve.Solution) bool, figure func(*solve.Solution) float64) measure {
	if ok == nil {
		ok = func(*solve.Solution) bool { return true }
	}
	return func(by corner.Kind) cornered {
		return f.worstCorner(by, sign, ok, figure,
			func(c *corner.Set, i int) corner.Value { return c.Figure(i, sign, figure) })
	}
}

// cornerAmps is the magnitude of a branch's current; of several the sum.
func (f *facts) cornerAmps(branches ...*circuit.Branch) measure {
	return f.figureOf(1, nil, func(s *solve.Solution) float64 {
		sum := 0.0
		for _, b := range branches {
			if a := math.Abs(s.Amps(b)); !math.IsNaN(a) {
				sum += a
			}
		}
		return sum
	})
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

// split words a figure of three kinds, the deciding one first: "3.30 A in the worst
// case (nominal 2.40 A, likely 2.80 A)", or the figure alone where it is one.
func (c cornered) split(print func(float64) string) string {
	return print(c.decisive()) + c.said(print)
}

var kindWords = [...]string{"at nominal", "in the likely case", "in the worst case"}

// said is what split adds to the deciding figure.
func (c cornered) said(print func(float64) string) string {
	if print(c.Nominal) == print(c.Corner) {
		return ""
	}
	others := make([]string, 0, 2)
	for k, word := range []string{"nominal ", "likely ", "at worst "} {
		if corner.Kind(k) != c.by {
			others = append(others, word+print(c.Of(corner.Kind(k))))
		}
	}
	return " " + kindWords[c.by] + " (" + strings.Join(others, ", ") + ")"
}
