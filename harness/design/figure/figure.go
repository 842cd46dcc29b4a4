// Package figure is a number held against its limit, as a finding has it and as a
// design writes it where it accepts one.
package figure

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/design/quantity"
)

// Sense tells which way a figure is worse.
type Sense int

// The senses. A finding without one has none of them.
const (
	Larger  Sense = 1
	Smaller Sense = -1
)

// Drift is the share of an accepted figure by which it may get worse before the
// finding counts as another one: more than printing to three digits and a length
// measured again move it, less than the next size of wire (a fifth in area at the
// least) or the next rating of a fuse (a sixth at the least).
const Drift = 0.05

// Figure is the number that decides a finding, in the base unit of its dimension,
// with what it is held against.
type Figure struct {
	Value float64
	Limit float64            // NaN = it is held against nothing
	Of    quantity.Dimension // "" = a count or ratio
	Worse Sense              // 0 = the finding has no figure
}

// Plain are the rules whose figure is a count or a ratio, written without a unit.
// Those of all other rules have one.
var Plain = []string{"back-feed", "crowded-stud", "fuse-grading", "fuse-inrush", "plug-ways"}

// New makes a figure of numbers in a unit as Number has it.
func New(value, limit float64, unit string, worse Sense) Figure {
	of := quantity.OfUnit(unit)
	return Figure{quantity.In(value, unit, of), quantity.In(limit, unit, of), of, worse}
}

// Given tells whether there is a figure that can be written down.
func (g Figure) Given() bool {
	return g.Worse != 0 && !math.IsNaN(g.Value) && !math.IsInf(g.Value, 0) && !math.IsInf(g.Limit, 0)
}

// String is the figure as a design writes it: "30 A of 16.1 A", "1.22 m"; ""
// when there is none.
func (g Figure) String() string {
	if !g.Given() {
		return ""
	}
	text := quantity.Brief(g.Value, g.Of)
	if !math.IsNaN(g.Limit) {
		text += " of " + quantity.Brief(g.Limit, g.Of)
	}
	return text
}

// Parse reads what String writes. The sense is not in the text: the finding
// has it.
func Parse(text string) (Figure, error) {
	value, limit, held := strings.Cut(text, " of ")
	v, of, err := quantity.ParseAny(value)
	if err != nil || !held {
		return Figure{Value: v, Limit: math.NaN(), Of: of}, err
	}
	l, ofLimit, err := quantity.ParseAny(limit)
	if err == nil && of != ofLimit {
		err = fmt.Errorf("%q and %q are not of one unit", strings.TrimSpace(value), strings.TrimSpace(limit))
	}
	return Figure{Value: v, Limit: l, Of: of}, err
}

// WorseThan tells whether the figure is worse than another by more than Drift of
// it: the value itself, or, where both are held against a limit, how far it is
// beyond. A figure of another dimension, or one that is not finite, is worse.
func (g Figure) WorseThan(was Figure) bool {
	if g.Worse == 0 {
		return false
	}
	grown := g.Value - was.Value
	if !math.IsNaN(g.Limit) && !math.IsNaN(was.Limit) {
		grown -= g.Limit - was.Limit
	}
	if g.Value == was.Value && (g.Limit == was.Limit || math.IsNaN(g.Limit) || math.IsNaN(was.Limit)) {
		grown = 0 // also of two without end
	}
	within := float64(g.Worse)*grown <= Drift*math.Abs(was.Value)+1e-12 // false for what is no number
	return g.Of != was.Of || !within
}

// Beyond is how far the figure is on the wrong side of its limit, or of zero, to
// put findings of one rule in order; -Inf when there is no figure.
func (g Figure) Beyond() float64 {
	if g.Worse == 0 || math.IsNaN(g.Value) {
		return math.Inf(-1)
	}
	if math.IsNaN(g.Limit) {
		return float64(g.Worse) * g.Value
	}
	return float64(g.Worse) * (g.Value - g.Limit)
}
