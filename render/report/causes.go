package report

import (
	"cmp"
	"slices"
	"strconv"

	"fusewright/harness/remedy"
	"fusewright/harness/review/finding"
)

// CauseRow is a thing in the design with the findings that follow from it.
type CauseRow struct {
	ID       string     `json:"id"`       // as the terminal names it: the number of its gravest finding
	Findings []int      `json:"findings"` // places in the list of findings
	Remedy   *TrialRow  `json:"remedy,omitempty"`
	Tried    []TrialRow `json:"tried,omitempty"`
}

// TrialRow is a change that was put into a copy of the design, and what came of it in
// numbers of findings.
type TrialRow struct {
	Of     string   `json:"of,omitempty"`
	Was    string   `json:"was,omitempty"`
	Now    string   `json:"now,omitempty"`
	Mends  int      `json:"mends"`
	Eases  int      `json:"eases"`
	Worse  int      `json:"worsens,omitempty"`
	Guess  bool     `json:"guess,omitempty"`  // the figure is one that may be meant
	Brings []string `json:"brings,omitempty"` // rules
}

// WithCauses adds what the findings follow from.
func (r *Report) WithCauses(p *remedy.Plan) *Report {
	more := *r
	at := map[*finding.Finding]int{}
	for i, f := range r.Findings {
		at[f.of] = i
	}
	for _, c := range p.Causes {
		row := CauseRow{Remedy: trialRow(c.Remedy)}
		for _, f := range c.Findings {
			row.Findings = append(row.Findings, at[f])
		}
		gravest := slices.MinFunc(c.Findings, func(a, b *finding.Finding) int { return cmp.Compare(a.Number, b.Number) })
		row.ID = strconv.Itoa(gravest.Number)
		for _, t := range c.Tried {
			row.Tried = append(row.Tried, *trialRow(t))
		}
		more.Causes = append(more.Causes, row)
	}
	more.Together = trialRow(p.Together)
	return &more
}

func trialRow(t *remedy.Trial) *TrialRow {
	if t == nil {
		return nil
	}
	return &TrialRow{Of: t.About, Was: t.Was, Now: t.Will, Mends: len(t.Mends), Eases: len(t.Eases), Worse: len(t.Worsens), Guess: t.Guess, Brings: brings(t)}
}

// brings are the rules of what a change brings, each once.
func brings(t *remedy.Trial) []string {
	var names []string
	for _, f := range t.Breaks {
		names = append(names, f.Rule)
	}
	slices.Sort(names)
	return slices.Compact(names)
}
