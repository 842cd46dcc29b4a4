package page

import (
	"unicode/utf8"

	"fusewright/harness"
	"fusewright/harness/remedy"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// Cause is a thing in the design with the findings that follow from it.
type Cause struct {
	Title    string  `json:"title"` // what is wrong, as its first finding has it; of a long one Rule
	Rule     string  `json:"rule"`  // what is wrong, as its rule says it in general
	Of       string  `json:"of"`    // the thing
	Line     int     `json:"line"`
	Findings []int   `json:"findings"` // places in the list of findings
	Remedy   *Trial  `json:"remedy,omitempty"`
	Tried    []Trial `json:"tried,omitempty"`
	Untried  bool    `json:"untried,omitempty"` // nothing was tried against it
}

// Trial is a change that was put into a copy of the design, and what came of it, in numbers
// of findings.
type Trial struct {
	Of    string   `json:"of,omitempty"`
	Was   string   `json:"was,omitempty"`
	Now   string   `json:"now"`
	Holds bool     `json:"holds"`
	Guess bool     `json:"guess,omitempty"`
	Mends []int    `json:"mends,omitempty"`
	Eases []int    `json:"eases,omitempty"`
	Worse []int    `json:"worse,omitempty"`
	Adds  []string `json:"adds,omitempty"` // rules of findings that it brings
}

// causes groups the open findings by what mends them; each stands by itself before that is known.
func causes(r *harness.Review, rows []Finding) []Cause {
	at := map[*finding.Finding]int{}
	for i, f := range r.Findings {
		at[f] = i
	}
	list := []Cause{}
	if r.Plan == nil {
		for i, f := range r.Findings {
			if f.Accepted == "" {
				list = append(list, Cause{Title: heading(f), Rule: sentence(f), Of: rows[i].About, Line: rows[i].Line, Findings: []int{i}})
			}
		}
		return list
	}
	for _, c := range r.Plan.Causes {
		lead := rows[at[c.Lead()]]
		row := Cause{Title: heading(c.Lead()), Rule: sentence(c.Lead()), Of: thing(c, lead), Line: lead.Line, Remedy: trial(c.Remedy), Untried: c.Untried}
		for _, f := range c.Findings {
			row.Findings = append(row.Findings, at[f])
		}
		for _, t := range c.Tried {
			row.Tried = append(row.Tried, *trial(t))
		}
		list = append(list, row)
	}
	return list
}

// mostHeading is how long a heading is at most: two lines beside the drawing.
const mostHeading = 90

// heading is what a finding says of its part, or its rule's sentence where that is long.
func heading(f *finding.Finding) string {
	if utf8.RuneCountInString(f.What) > mostHeading {
		return sentence(f)
	}
	return capital(f.What)
}

// sentence is what is wrong, as the rule of a finding says it in general.
func sentence(f *finding.Finding) string { return capital(rules.Find(f.Rule).Title) }

// thing is what findings follow from: the thing that the remedy changes, as it is now, where
// several do; else what the first one is about.
func thing(c *remedy.Cause, lead Finding) string {
	if c.Remedy == nil || c.Remedy.Guess || len(c.Findings) < 2 || c.Remedy.Was == "" {
		return lead.About
	}
	return capital(c.Remedy.About + ": " + c.Remedy.Was)
}

func trial(t *remedy.Trial) *Trial {
	if t == nil {
		return nil
	}
	row := &Trial{Of: t.About, Was: t.Was, Now: t.Will, Holds: t.Holds(), Guess: t.Guess,
		Mends: numbers(t.Mends), Eases: numbers(t.Eases), Worse: numbers(t.Worsens)}
	for _, f := range t.Breaks {
		row.Adds = append(row.Adds, f.Rule)
	}
	return row
}

func numbers(list []*finding.Finding) (n []int) {
	for _, f := range list {
		n = append(n, f.Number)
	}
	return n
}
