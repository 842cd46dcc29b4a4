package rules

import (
	"math"

	"fusewright/harness/design/figure"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

// Here a figure is held against its limit, and a severity is chosen by it.

// over tells whether a figure is above its limit by more than the rounding of
// the arithmetic: a 5 A load fits a limit of 5 A.
func over(figure, limit float64) bool { return figure > limit+1e-9*math.Abs(limit) }

// graver is the severity one step up, where a load is critical or a figure is far
// beyond.
func graver(is bool, plain, graver finding.Severity) finding.Severity {
	if is {
		return graver
	}
	return plain
}

// verdict is what comes of a figure held against a limit.
type verdict struct {
	cornered
	limit    float64
	severity finding.Severity // 0 = kept
}

// held holds a figure against a limit by what the library says of the limit: the
// figure in the situation where that is worst, and the severity. When only the
// worst case breaks the limit without its margin it is advice.
func (p *Pass) held(limit string, of measure, sense figure.Sense, most, mostAtWorst float64,
	severity func(cornered) finding.Severity) verdict {
	broken := func(c cornered, most float64) bool {
		return c.in != nil && over(float64(sense)*c.decisive(), float64(sense)*most)
	}
	if c := of(p.decidedBy(limit)); broken(c, most) {
		return verdict{c, most, severity(c)}
	}
	if c := of(corner.AtWorst); broken(c, mostAtWorst) {
		return verdict{c, mostAtWorst, finding.Advice}
	}
	return verdict{}
}

// decidedBy is the figure against which a limit holds.
func (f *facts) decidedBy(limit string) corner.Kind {
	if v := f.d.Library.Verdict(limit); v != nil {
		return corner.KindOf(v.Figure)
	}
	return corner.AtWorst
}

// always is a severity that does not hang on the figure.
func always(s finding.Severity) func(cornered) finding.Severity {
	return func(cornered) finding.Severity { return s }
}

// atMost gives a finding the three numbers every limit rule shows: the value, its
// limit, and what is left (negative when it is over), all in one unit. The first
// two decide it. For a floor, use atLeast.
func atMost(f *finding.Finding, name string, value, limit float64, unit string) {
	decides(f, limit, unit, figure.Larger, finding.Number{Name: name, Value: value, Unit: unit})
}

// atLeast is atMost for a value that must not be below its limit.
func atLeast(f *finding.Finding, name string, value, limit float64, unit string) {
	decides(f, limit, unit, figure.Smaller, finding.Number{Name: name, Value: value, Unit: unit})
}

// decides gives a finding a cornered figure with its limit: what is left of it by
// the figure that decides is the margin, negative when it is over.
func (c cornered) decides(f *finding.Finding, name string, worse figure.Sense, scale, limit float64, unit string) {
	f.Situation = c.in.Name
	f.Leave = f.Severity == finding.Advice // only the worst case breaks the limit
	decides(f, limit*scale, unit, worse, finding.Number{Name: name, Value: c.decisive() * scale, Unit: unit})
	three := make([]finding.Number, 0, 5)
	for k, word := range []string{" nominal", " likely", " worst case"} {
		three = append(three, finding.Number{Name: name + word, Value: c.Of(corner.Kind(k)) * scale, Unit: unit})
	}
	f.Numbers = append(three, f.Numbers[1:]...)
}

// decides holds the last of some values against a limit.
func decides(f *finding.Finding, limit float64, unit string, worse figure.Sense, values ...finding.Number) {
	value := values[len(values)-1].Value
	left := limit - value
	if worse == figure.Smaller {
		left = value - limit
	}
	f.Numbers = append(values, finding.Number{Name: "limit", Value: limit, Unit: unit},
		finding.Number{Name: "margin", Value: left, Unit: unit})
	f.Figure = figure.New(value, limit, unit, worse)
}

// decidedBy gives a finding its first number, which decides it and is held against
// nothing.
func decidedBy(f *finding.Finding, name string, value float64, unit string, worse figure.Sense) {
	f.Numbers = []finding.Number{{Name: name, Value: value, Unit: unit}}
	f.Figure = figure.New(value, math.NaN(), unit, worse)
}
