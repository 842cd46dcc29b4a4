// Package page is what the live page shows of a review, as JSON, with the page itself: one
// document, style sheets and modules without a build step. It puts into words and counts;
// nothing is worked out in it. Figures are in the units printed behind them.
package page

import (
	"embed"
	"io/fs"
	"path/filepath"

	"fusewright/harness"
	"fusewright/harness/design/problem"
	"fusewright/render/report"
)

//go:embed assets
var assets embed.FS

// Assets are the document, index.html, and what it loads.
var Assets = must(fs.Sub(assets, "assets"))

func must(f fs.FS, err error) fs.FS {
	if err != nil {
		panic(err) // the folder is embedded above
	}
	return f
}

// Model is what the page shows. Its findings, parts and wires go by the labels of the
// drawing: "F1", "W7".
type Model struct {
	Heading  Heading       `json:"heading"`
	Verdict  Verdict       `json:"verdict"`
	Counts   report.Counts `json:"counts"`
	Findings []Finding     `json:"findings"`
	// Causes group the findings, the worst first; each finding by itself until Tried.
	Causes []Cause `json:"causes"`
	Tried  bool    `json:"tried"` // the remedies have been tried
	// Together is all remedies in one copy; nil with fewer than two of them.
	Together *Trial `json:"together,omitempty"`
	Parts    []Part `json:"parts"` // wires among them
	// Situations in the order of the design.
	Situations []Situation `json:"situations"`
	Circuits   []Way       `json:"circuits"`
	// Taken is what was taken for want of data, a sentence each.
	Taken []string `json:"taken"`
	// Change is what the last save came to; nil = nothing was saved since the start.
	Change *Change `json:"change,omitempty"`
	// Problems are what is wrong with the text on the disk: all else is the last good design.
	Problems []Problem `json:"problems,omitempty"`
	Caution  string    `json:"caution"`

	// What the other views show; see their files.
	Planner any `json:"planner,omitempty"`
	WhatIf  any `json:"whatIf,omitempty"`
}

// Heading names the design.
type Heading struct {
	Title    string `json:"title"`
	File     string `json:"file"` // without folders
	Revision string `json:"revision,omitempty"`
	Vehicle  string `json:"vehicle,omitempty"`
}

// Verdict is what the findings come to, as a sentence, with the gravest severity.
type Verdict struct {
	Says     string `json:"says"`
	Severity string `json:"severity,omitempty"` // "" = nothing was found, or nothing can be said
}

// Problem is what is wrong with a file, where it is.
type Problem struct {
	File string `json:"file"`
	Line int    `json:"line,omitempty"`
	Col  int    `json:"col,omitempty"`
	Says string `json:"says"`
}

// Of makes the model of a review, with what has changed since the last save; nil = nothing
// was saved.
func Of(r *harness.Review, before *Before) *Model {
	rep := report.New(r)
	m := &Model{
		Heading: Heading{Title: rep.Design.Title, File: filepath.Base(rep.Design.File), Revision: rep.Design.Revision, Vehicle: rep.Design.Vehicle},
		Counts:  rep.Counts, Verdict: verdict(rep.Counts), Caution: rep.Caution,
		Findings: findings(r, rep),
		Parts:    parts(r),
		Planner:  plannerOf(r), WhatIf: whatIfOf(r),
	}
	m.Causes, m.Tried = causes(r, m.Findings), r.Plan != nil
	if r.Plan != nil {
		m.Together = trial(r.Plan.Together)
	}
	m.situations(r)
	m.Circuits, m.Taken, m.Change = ways(r), taken(r), changes(r, before)
	m.markNew()
	return m
}

// Broken is the last good design, which may be nil, with what is wrong with the text now.
func Broken(r *harness.Review, list []problem.Problem) *Model {
	m := &Model{}
	if r != nil {
		m = Of(r, nil)
		m.Verdict = Verdict{Says: "Cannot be read: shown as last read"}
	}
	for _, p := range list {
		m.Problems = append(m.Problems, Problem{File: filepath.Base(p.Pos.File), Line: p.Pos.Line, Col: p.Pos.Col, Says: saying(p)})
	}
	return m
}
