package compare

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
)

// BaselineVersion is the version of the baseline file's shape.
const BaselineVersion = 2

// Baseline is the open findings that a review starts from: only what comes on
// top of them is new. A finding is known by its rule, its part, which wire of the
// part it is about and its figure, not by its line or the number of the wire, so
// that editing the file does not make it new. One that has grown graver, or whose
// figure has got worse by more than figure.Drift, is new again.
type Baseline struct {
	Version int     `json:"fusewright_baseline"`
	Entries []Entry `json:"findings"`
}

// Entry is one known finding. A rule that speaks of several wires of a part has
// as many entries.
type Entry struct {
	Rule     string `json:"rule"`
	Part     string `json:"part"`
	Wire     string `json:"wire,omitempty"` // "feed", "return"; "" = the part itself
	Severity string `json:"severity"`
	// Value is the figure that decides it, Limit what that is held against, both in
	// SI units (°C, mm² and rpm as they are; shares as such), Of what they measure.
	Value *float64           `json:"value,omitempty"`
	Limit *float64           `json:"limit,omitempty"`
	Of    quantity.Dimension `json:"of,omitempty"`
}

// NewBaseline takes down the open findings of a review, in their order.
func NewBaseline(list []*finding.Finding) *Baseline {
	b := &Baseline{Version: BaselineVersion, Entries: []Entry{}}
	for _, f := range finding.All(list) {
		if f.Accepted == "" {
			b.Entries = append(b.Entries, entryOf(f))
		}
	}
	return b
}

// entryOf takes down a finding.
func entryOf(f *finding.Finding) Entry {
	e := Entry{Rule: f.Rule, Part: f.Part, Wire: f.Wire, Severity: f.Severity.String()}
	if g := f.Figure; g.Given() {
		e.Value, e.Of = &g.Value, g.Of
		if !math.IsNaN(g.Limit) {
			e.Limit = &g.Limit
		}
	}
	return e
}

// figure is what the entry says, of the sense of a finding's.
func (e *Entry) figure(worse figure.Sense) figure.Figure {
	g := figure.Figure{Value: *e.Value, Limit: math.NaN(), Of: e.Of, Worse: worse}
	if e.Limit != nil {
		g.Limit = *e.Limit
	}
	return g
}

// covers tells whether an entry is of the finding, and that no worse.
func (e *Entry) covers(f *finding.Finding) bool {
	switch {
	case e.Rule != f.Rule, e.Part != f.Part, e.Wire != f.Wire, finding.SeverityOf(e.Severity) < f.Severity:
		return false
	case e.Value == nil:
		return !f.Figure.Given()
	}
	return !f.Figure.WorseThan(e.figure(f.Figure.Worse))
}

// milder tells whether an entry covers less than another, for findings like f.
func (e *Entry) milder(than *Entry, f *finding.Finding) bool {
	if a, b := finding.SeverityOf(e.Severity), finding.SeverityOf(than.Severity); a != b || e.Value == nil || than.Value == nil {
		return a < b
	}
	return e.figure(f.Figure.Worse).Beyond() < than.figure(f.Figure.Worse).Beyond()
}

// ReadBaseline reads a baseline file; the error is a problem.List.
func ReadBaseline(file string, data []byte) (*Baseline, error) {
	var b Baseline
	var l problem.List
	at := problem.Pos{File: file}
	switch err := json.Unmarshal(data, &b); {
	case err != nil:
		l.Add(problem.Problem{Pos: at, What: "not a baseline: " + err.Error(),
			Expected: "a file written by check --write-baseline"})
	case b.Version != BaselineVersion:
		l.Add(problem.Problem{Pos: at, What: fmt.Sprintf("baseline of version %d, which does not hold what this program compares", b.Version),
			Expected: fmt.Sprintf("version %d: look at what `check` finds and write the file anew with check --write-baseline", BaselineVersion)})
		return nil, l.Err()
	}
	for i, e := range b.Entries {
		if finding.SeverityOf(e.Severity) == 0 || e.Rule == "" {
			l.Add(problem.Problem{Pos: at, What: fmt.Sprintf("finding %d of the baseline: rule %q, severity %q", i+1, e.Rule, e.Severity),
				Expected: "a rule and danger, fault or advice"})
		}
	}
	if err := l.Err(); err != nil {
		return nil, err
	}
	return &b, nil
}

// MarkKnown marks each finding that the baseline has, and gives the entries that
// no finding uses any more. An entry stands for one finding. The worst findings
// choose first, and each takes the mildest entry that will do, so that as many as
// can are known.
func (b *Baseline) MarkKnown(list []*finding.Finding) (unused []Entry) {
	left := map[[2]string][]*Entry{} // by rule and part
	for i := range b.Entries {
		e := &b.Entries[i]
		left[[2]string{e.Rule, e.Part}] = append(left[[2]string{e.Rule, e.Part}], e)
	}
	used := map[*Entry]bool{}
	worstFirst := finding.All(list)
	slices.SortStableFunc(worstFirst, finding.Compare)
	for _, f := range worstFirst {
		var take *Entry
		for _, e := range left[[2]string{f.Rule, f.Part}] {
			if f.Accepted == "" && !used[e] && e.covers(f) && (take == nil || e.milder(take, f)) {
				take = e
			}
		}
		f.Known = take != nil
		used[take] = true
	}
	for _, f := range list {
		for _, c := range f.Covers {
			if f.Known && !c.Known { // the finding is known, what it covers is not
				f.Known = false
				f.What += "; not in the baseline: " + c.What + " [" + c.Rule + "]"
			}
		}
	}
	for i := range b.Entries {
		if !used[&b.Entries[i]] {
			unused = append(unused, b.Entries[i])
		}
	}
	return unused
}

// Outgrown says of unused entries, one each, what was known of a finding that has
// got worse, and counts the others, whose findings are gone.
func Outgrown(unused []Entry, list []*finding.Finding) (worse []string, gone int) {
	told := map[*finding.Finding]bool{}
	all := finding.All(list)
	for _, e := range unused {
		i := slices.IndexFunc(all, func(f *finding.Finding) bool {
			return !told[f] && !f.Known && f.Accepted == "" && e.Rule == f.Rule && e.Part == f.Part && e.Wire == f.Wire
		})
		if i < 0 {
			gone++
			continue
		}
		f, was := all[i], e.Severity
		told[f] = true
		if e.Value != nil {
			was += ", " + e.figure(f.Figure.Worse).String()
		}
		now := wording.Present([]string{f.Severity.String(), f.Figure.String()}, ", ")
		worse = append(worse, fmt.Sprintf("%s at %s was %s, now %s", e.Rule, e.Part, was, now))
	}
	return worse, gone
}
