package page

import (
	"fusewright/harness"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
	"fusewright/render/report"
)

// Before is the design before the last save.
type Before struct {
	Review *harness.Review
	Saved  string // when that was, as the page prints it
	Lines  []int  // that changed, as they are numbered now
}

// Change is what the last save mended and broke.
type Change struct {
	Saved  string `json:"saved,omitempty"`
	Lines  []int  `json:"lines,omitempty"`
	Mended []Mark `json:"mended,omitempty"` // gone, milder or accepted
	Broken []Mark `json:"broken,omitempty"` // new, graver or worse
}

// Mark is a finding that came or went.
type Mark struct {
	Number   int    `json:"number,omitempty"` // as it is now; of what is gone none
	Severity string `json:"severity"`
	Says     string `json:"says"`
	How      string `json:"how,omitempty"` // what it was and is, where it is still there
}

// changes compares a review with the one before; nil = there was none.
func changes(r *harness.Review, was *Before) *Change {
	if was == nil || was.Review == nil {
		return nil
	}
	c := &Change{Saved: was.Saved, Lines: was.Lines}
	for _, f := range compare.Findings(was.Review.Findings, r.Findings) {
		m := Mark{Severity: severityOf(f.Old)}
		if f.New != nil {
			m.Number, m.Severity, m.Says = f.New.Number, severityOf(f.New), said(f.New)
		} else {
			m.Says = said(f.Old)
		}
		if f.What == compare.Changed {
			m.How = f.Standing()
		}
		if f.Rank() > 0 {
			c.Broken = append(c.Broken, m)
		} else {
			c.Mended = append(c.Mended, m)
		}
	}
	return c
}

func severityOf(f *finding.Finding) string {
	if f == nil {
		return ""
	}
	return f.Severity.String()
}

// said is a finding in short: "F1 main: too large for the wire".
func said(f *finding.Finding) string { return report.About(f) + ": " + report.Says(f) }

// markNew marks the findings that the last save brought or made worse.
func (m *Model) markNew() {
	if m.Change == nil {
		return
	}
	came := map[int]bool{}
	for _, x := range m.Change.Broken {
		came[x.Number] = x.Number > 0
	}
	for i := range m.Findings {
		m.Findings[i].New = came[m.Findings[i].Number]
	}
}
