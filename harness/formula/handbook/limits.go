package handbook

import (
	"fmt"
	"math"
	"strings"
)

// check collects what is wrong with the inputs of a question.
type check struct{ wrong []string }

// between asks for a number within limits, both allowed.
func (c *check) between(name string, x, lo, hi float64, unit string) {
	if !(x >= lo && x <= hi) {
		c.say("%s is %g %s (expected %g to %g %s)", name, x, unit, lo, hi, unit)
	}
}

// positive asks for a number above zero and below a sensible limit.
func (c *check) positive(name string, x, hi float64, unit string) {
	if !(x > 0 && x <= hi) {
		c.say("%s is %g %s (expected above 0, at most %g %s)", name, x, unit, hi, unit)
	}
}

func (c *check) say(text string, args ...any) { c.wrong = append(c.wrong, fmt.Sprintf(text, args...)) }

// err is all that is wrong in one error; nil when nothing is.
func (c *check) err() error {
	if len(c.wrong) == 0 {
		return nil
	}
	return fmt.Errorf("%s", strings.Join(c.wrong, "; "))
}

// The widest inputs that a question takes.
const (
	mostA, mostV, mostM, mostMm2, mostW = 1e5, 1000.0, 1e4, 1000.0, 1e7
	coldestC, hottestC                  = -60.0, 400.0
)

// unset tells whether an optional number was left out.
func unset(x float64) bool { return x == 0 || math.IsNaN(x) }
