// Package validation sets the program's formulas beside published tables and
// worked examples: for each source what was compared, how many values, the
// largest and the median deviation, and whether the program errs on the unsafe
// side by more than a stated tolerance.
//
// The reference values are the files of folder reference, each with its source
// and certainty in its first lines. The package judges nothing in a design.
package validation

import (
	"math"
	"sort"
)

// Side says which way a deviation is unsafe.
type Side int

// The sides.
const (
	Either   Side = iota // both ways count the same
	OverBad              // unsafe when the program says more: an allowed current
	UnderBad             // unsafe when the program says less: a drop, an opening time
)

// String is the side in words.
func (s Side) String() string {
	switch s {
	case OverBad:
		return "more than published"
	case UnderBad:
		return "less than published"
	}
	return "either way"
}

// Kind says what a comparison proves.
type Kind string

// The kinds. What is read back is a table of the library read back, or a formula against
// values that were made with it, or that it was fitted to: it finds slips of copying and of units. A prediction is
// held against a measurement, or against a table that the program does not use for it.
const (
	ReadBack   Kind = "read back"
	Prediction Kind = "prediction"
)

// Comparison is one source against the program.
type Comparison struct {
	Kind      Kind   `json:"kind"`
	Source    string `json:"source"`         // of the published values
	Certainty string `json:"certainty"`      // see library.Certainties
	Note      string `json:"note,omitempty"` // what was left out or is odd in the source
	What      string `json:"what"`           // what of the program was compared
	N         int    `json:"n"`              // values compared
	Missing   int    `json:"missing"`        // values of the source for which the program gives none
	// MaxShare is the deviation farthest from zero, program/published − 1, and
	// MaxAt where; MedianShare the median of the signed deviations.
	MaxShare    float64 `json:"max_share"`
	MedianShare float64 `json:"median_share"`
	MaxAt       string  `json:"max_at"`
	// Tolerance says what is allowed and why.
	Tolerance  string `json:"tolerance"`
	UnsafeSide Side   `json:"unsafe_side"`
	Unsafe     int    `json:"unsafe"`  // values on the unsafe side by more than the tolerance
	Outside    int    `json:"outside"` // values beyond the tolerance on any side
	// Governed tells that a table governs whatever the compared formula says,
	// so that Unsafe counts where the table takes over, not a fault.
	Governed bool `json:"governed"`

	within, withinShare []float64 // what was allowed, in the unit of the value and as a share of it
}

// pair is one value of a source with the program's.
type pair struct {
	at                 string
	program, published float64
	within             float64 // tolerance in the unit of the value
}

// compare fills in the numbers of a comparison. Pairs whose program value is
// no number count as missing.
func compare(c Comparison, pairs []pair) Comparison {
	if c.Kind == "" {
		c.Kind = ReadBack
	}
	var all []float64
	for _, p := range pairs {
		if math.IsNaN(p.program) || p.published == 0 {
			c.Missing++
			continue
		}
		d := p.program/p.published - 1
		if len(all) == 0 || math.Abs(d) > math.Abs(c.MaxShare) {
			c.MaxShare, c.MaxAt = d, p.at
		}
		all = append(all, d)
		c.within = append(c.within, p.within)
		c.withinShare = append(c.withinShare, p.within/math.Abs(p.published))
		// A little over the tolerance is the rounding of binary numbers.
		off := p.program - p.published
		if math.Abs(off) > p.within*(1+1e-9) {
			c.Outside++
			if c.UnsafeSide == Either || (off > 0) == (c.UnsafeSide == OverBad) {
				c.Unsafe++
			}
		}
	}
	c.N = len(all)
	c.MedianShare = median(all)
	return c
}

func median(x []float64) float64 {
	if len(x) == 0 {
		return math.NaN()
	}
	s := append([]float64(nil), x...)
	sort.Float64s(s)
	m := len(s) / 2
	if len(s)%2 == 1 {
		return s[m]
	}
	return (s[m-1] + s[m]) / 2
}

// Comparisons runs every comparison, in a fixed order.
func Comparisons() []Comparison {
	var out []Comparison
	for _, group := range []func() []Comparison{copper, drops, heat, bundles, tables, shortCircuits, fuses, batteries, chargingSystem} {
		out = append(out, group()...)
	}
	return out
}
