package compare

import (
	"encoding/json"
	"fmt"

	"fusewright/harness/finding"
	"fusewright/harness/problem"
)

// BaselineVersion is the version of the baseline file's shape.
const BaselineVersion = 1

// Baseline is the open findings that a review starts from: only what comes on
// top of them is new. A finding is known by its rule and part, not its line or
// figures, so that editing the file does not make it new; one that has grown
// graver is new again.
type Baseline struct {
	Version int     `json:"fusewright_baseline"`
	Entries []Entry `json:"findings"`
}

// Entry is one known finding. A rule that speaks of several wires of a part has
// as many entries.
type Entry struct {
	Rule     string `json:"rule"`
	Part     string `json:"part"`
	Severity string `json:"severity"`
}

// NewBaseline takes down the open findings of a review, in their order.
func NewBaseline(list []*finding.Finding) *Baseline {
	b := &Baseline{Version: BaselineVersion, Entries: []Entry{}}
	for _, f := range list {
		if f.Accepted == "" {
			b.Entries = append(b.Entries, Entry{f.Rule, f.Part, f.Severity.String()})
		}
	}
	return b
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
		l.Add(problem.Problem{Pos: at, What: fmt.Sprintf("baseline of version %d", b.Version),
			Expected: fmt.Sprintf("\"fusewright_baseline\": %d", BaselineVersion)})
	}
	for i, e := range b.Entries {
		if severities[e.Severity] == 0 || e.Rule == "" {
			l.Add(problem.Problem{Pos: at, What: fmt.Sprintf("finding %d of the baseline: rule %q, severity %q", i+1, e.Rule, e.Severity),
				Expected: "a rule and danger, fault or advice"})
		}
	}
	if err := l.Err(); err != nil {
		return nil, err
	}
	return &b, nil
}

var severities = map[string]finding.Severity{
	finding.Danger.String(): finding.Danger, finding.Fault.String(): finding.Fault,
	finding.Advice.String(): finding.Advice,
}

// Known tells for each finding whether the baseline has it, and gives the
// entries that no finding uses any more.
func (b *Baseline) Known(list []*finding.Finding) (known []bool, unused []Entry) {
	left := make([]bool, len(b.Entries))
	byPart := map[[2]string][]int{}
	for i, e := range b.Entries {
		left[i] = true
		byPart[[2]string{e.Rule, e.Part}] = append(byPart[[2]string{e.Rule, e.Part}], i)
	}
	known = make([]bool, len(list))
	for i, f := range list {
		if f.Accepted != "" {
			continue
		}
		for _, n := range byPart[[2]string{f.Rule, f.Part}] {
			if left[n] && severities[b.Entries[n].Severity] >= f.Severity {
				left[n], known[i] = false, true
				break
			}
		}
	}
	for i, e := range b.Entries {
		if left[i] {
			unused = append(unused, e)
		}
	}
	return known, unused
}
