package page

import (
	"cmp"
	"math"
	"path/filepath"

	"fusewright/harness"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/outlook"
	"fusewright/render/report"
)

// Finding is one finding; findings of one number are printed as one.
type Finding struct {
	Number   int    `json:"number"`
	Severity string `json:"severity"`
	Rule     string `json:"rule"`
	Part     string `json:"part,omitempty"` // the label on the drawing; "" = it is not on it
	// Marks are the labels of what a finding without a part is about: the wires of a run, the parts
	// at a place. Start is what the planner begins with, of one on a situation or ride.
	Marks []string `json:"marks,omitempty"`
	Start string   `json:"start,omitempty"`
	About string   `json:"about"` // "W25 deck wash"
	Says  string   `json:"says"`  // what is wrong with it, in short
	// Value is the figure that decides it, as printed, Limit what it is held against, "over
	// 17.4 A"; "" = none.
	Value     string   `json:"value,omitempty"`
	Limit     string   `json:"limit,omitempty"`
	Brief     string   `json:"brief,omitempty"` // its figures in a line
	New       bool     `json:"new,omitempty"`   // the last save brought it or made it worse
	What      string   `json:"what"`            // one sentence with its figures
	Figures   []string `json:"figures,omitempty"`
	Situation string   `json:"situation,omitempty"`
	Why       string   `json:"why"`
	Change    string   `json:"change"`
	Source    string   `json:"source,omitempty"`
	Accepted  string   `json:"accepted,omitempty"`
	Unsure    bool     `json:"unsure,omitempty"` // its margin is smaller than what rests on values without a source
	File      string   `json:"file"`
	Line      int      `json:"line"`
	Col       int      `json:"col"`
}

func findings(r *harness.Review, rep *report.Report) []Finding {
	refs, marks, starts := refsOf(r), marksOf(r), startsOf(r)
	list := []Finding{}
	for i, row := range rep.Findings {
		f := r.Findings[i]
		value, limit := figureOf(f)
		list = append(list, Finding{
			Number: f.Number, Severity: row.Severity, Rule: f.Rule, Part: cmp.Or(refs[f.Ref], refs[f.Part]),
			Marks: marks[f.Ref], Start: starts[f.Ref], About: row.About(), Says: rules.Find(f.Rule).Says, Value: value, Limit: limit,
			What: f.What, Brief: row.Brief(), Figures: row.Figures(), Situation: f.Situation,
			Why: f.Why, Change: f.Change, Source: f.Source, Accepted: f.Accepted, Unsure: row.NoMargin,
			File: filepath.Base(f.Pos.File), Line: f.Pos.Line, Col: f.Pos.Col,
		})
	}
	return list
}

// refsOf leads from names and labels of parts and wires to the label.
func refsOf(r *harness.Review) map[string]string {
	refs := map[string]string{}
	for _, p := range r.Circuit.Parts {
		refs[p.Name], refs[p.Ref] = p.Ref, p.Ref
	}
	for _, w := range r.Circuit.Wires {
		refs[w.Number] = w.Number
	}
	for _, b := range r.Circuit.Branches {
		if b.Fuse != nil && b.Fuse.Ref != "" {
			refs[b.Fuse.Ref] = b.Fuse.Ref // in the way of a block too
		}
	}
	return refs
}

// marksOf leads from the names of runs to the wires in them, and from those of places to the parts there.
func marksOf(r *harness.Review) map[string][]string {
	marks := map[string][]string{}
	for _, b := range r.Circuit.Bundles {
		for _, w := range b.Wires {
			marks[b.Run.Name] = append(marks[b.Run.Name], w.Number)
		}
	}
	for _, p := range r.Circuit.Parts {
		if p.Place != nil {
			marks[p.Place.Name] = append(marks[p.Place.Name], p.Ref)
		}
	}
	return marks
}

// startsOf leads from the names of situations and rides to what the planner begins with.
func startsOf(r *harness.Review) map[string]string {
	starts := map[string]string{}
	for _, s := range r.Design.Situations {
		starts[s.Name] = outlook.OfSituation(s)
	}
	for _, x := range r.Design.Rides {
		starts[x.Name] = outlook.OfLeg(x, 0)
	}
	return starts
}

// figureOf is the figure that decides a finding and what it is held against, as printed.
func figureOf(f *finding.Finding) (value, limit string) {
	g := f.Figure
	if !g.Given() {
		return f.Short, ""
	}
	if math.IsNaN(g.Limit) {
		return quantity.Brief(g.Value, g.Of), ""
	}
	value, limit = quantity.Against(g.Value, g.Limit, g.Of)
	if g.Worse == figure.Smaller {
		return value, "below " + limit
	}
	return value, "over " + limit
}

// verdict is what counts come to.
func verdict(c report.Counts) Verdict {
	switch {
	case c.Danger > 0:
		return Verdict{"Do not build from this yet", finding.Danger.String()}
	case c.Fault > 0:
		return Verdict{"Not ready to build", finding.Fault.String()}
	case c.Advice > 0:
		return Verdict{"No danger or fault found", finding.Advice.String()}
	}
	return Verdict{Says: "Nothing found"}
}

// saying is a problem without its place.
func saying(p problem.Problem) string {
	p.Pos = problem.Pos{}
	return p.String()[len(": "):]
}
