package derivation

import (
	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/library"
)

// value is a step in the making.
type value struct {
	label   string
	v       float64
	dim     *dimension
	formula string // with {} for each of from; "" of a leaf, whose from are checks
	from    []*value
	// carries is the one of from by which the share that is unsure goes; nil = each by how
	// much it moves the value.
	carries *value

	mark   Mark
	source string
	rests  shares // of a leaf
	pos    problem.Pos
	exact  bool // as written: printed with all its digits

	digits int
	unit   *scale // of the sum of which it is a term; nil = by its size
	off    bool
	sure   *shares

	ready string // the formula that is
	run   expr   // ready to be worked out,
	sums  bool   // of sums alone
	shown *shown
}

// of is a value that the formula gives.
func of(label string, dim *dimension, v float64, formula string, from ...*value) *value {
	return &value{label: label, v: v, dim: dim, formula: formula, from: from, mark: Computed}
}

// sum is the sum of values.
func sum(label string, dim *dimension, v float64, from ...*value) *value {
	formula := ""
	for i := range from {
		if i > 0 {
			formula += " + "
		}
		formula += "{}"
	}
	return of(label, dim, v, formula, from...)
}

// by tells which of its values the unsure share goes by.
func (x *value) by(of *value) *value { x.carries = of; return x }

// sourced adds to a computed value where its formula comes from.
func (x *value) sourced(text string) *value { x.source = text; return x }

// yours is what the design says.
func yours(label string, dim *dimension, v float64, at problem.Pos) *value {
	return &value{label: label, v: v, dim: dim, mark: Yours, pos: at, exact: true, rests: shares{onDesign: 1}}
}

// given is a quantity of the design.
func given(label string, dim *dimension, q design.Quantity) *value {
	return yours(label, dim, q.Value, q.Pos)
}

// row is a value of the library.
func row(label string, dim *dimension, v float64, s library.Source) *value {
	x := &value{label: label, v: v, dim: dim, source: s.String(), exact: true}
	switch s.Certainty {
	case library.TwoSources:
		x.mark, x.rests[onPublished] = TwoSources, 1
	case library.OneSource:
		x.mark, x.rests[onPublished] = OneSource, 1
	case library.Computed:
		x.mark, x.rests[onComputed] = Computed, 1
	case library.UserData:
		x.mark, x.rests[onDesign] = Yours, 1
	case library.FromMemory:
		x.mark, x.rests[onMemory] = Unsure, 1
	default:
		x.mark, x.rests[onNothing] = Unsure, 1
	}
	return x
}

// published is a constant with its source.
func published(label string, dim *dimension, v float64, source string) *value {
	return row(label, dim, v, library.Source{Text: source, Certainty: library.OneSource})
}

// assumed is a value of the program's own without a source.
func assumed(label string, dim *dimension, v float64, why string) *value {
	return row(label, dim, v, library.Source{Text: why, Certainty: library.CommonPractice})
}

// checked adds to a value without formula what shows that it is right: formulas in which
// it stands.
func (x *value) checked(by ...*value) *value { x.from = by; return x }

// solved is a value that the solver found together with others.
func solved(label string, dim *dimension, v float64, how string) *value {
	return &value{label: label, v: v, dim: dim, mark: Computed, source: how, rests: shares{onComputed: 1}}
}
