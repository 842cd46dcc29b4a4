package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

var acceptanceWithoutFigure = &Rule{
	Name:  "acceptance-without-figure",
	Title: "an acceptance does not state its figure",
	Says:  "accepted without a figure",
	Doc: "An entry under `accepted` covers a danger or a fault that a figure decides, and does not say at which " +
		"figure it was taken. With `figure` the finding is open again when it gets worse by more than " +
		quantity.Plain(figure.Drift, quantity.Share) + " of the figure: the value itself, or how far it is beyond its limit.",
	Formula:  "none",
	Limits:   "none",
	Why:      "the reason was written for one figure; the next change of the design can make it far worse without anyone being asked",
	Change:   "add the figure to the entry",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 30 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 6 mm²}, stays live: "marks the parked machine", own switch: true}
accepted:
  - {rule: fuse-over-wire, part: tail lamp, severity: danger, reason: "the lamp's own leads, 40 mm long"}
  - {rule: fuse-wire-curve, part: tail lamp, severity: danger, figure: 30 min of 9.72 s, reason: "the same leads"}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 30 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 6 mm²}, stays live: "marks the parked machine", own switch: true}
accepted:
  - {rule: fuse-over-wire, part: tail lamp, severity: danger, figure: 30 A of 17.9 A, reason: "the lamp's own leads, 40 mm long"}
  - {rule: fuse-wire-curve, part: tail lamp, severity: danger, figure: 30 min of 9.72 s, reason: "the same leads"}
`,
	// The acceptances can only be weighed after every other rule has run, so
	// accept reports for this rule.
	Run: func(*Pass) {},
}

// judgePin reports an acceptance of a fault or danger that leaves open at which
// figure it was taken, with the figure of the worst that it covers: it gives none,
// not what that is held against, or a figure far beyond.
func (p *Pass) judgePin(a *design.Acceptance, covered []*finding.Finding) {
	var worst *finding.Finding
	for _, f := range covered {
		if f.Severity > finding.Advice && f.Figure.Given() && !pinned(a, f.Figure) && (worst == nil || finding.Compare(f, worst) < 0) {
			worst = f
		}
	}
	if worst == nil {
		return
	}
	fin := finding.Finding{Severity: finding.Advice, Part: worst.Part, Ref: worst.Ref, Pos: a.Rule.Pos}
	fin.What = fmt.Sprintf("the acceptance of %s at %s does not state its figure: write figure: %s",
		worst.Rule, worst.Part, worst.Figure)
	if a.Figure != nil {
		fin.What = fmt.Sprintf("the acceptance of %s at %s allows far more than there is now: write figure: %s",
			worst.Rule, worst.Part, worst.Figure)
	}
	p.report(fin)
}

// pinned tells whether an acceptance holds for a figure and not for far worse ones.
func pinned(a *design.Acceptance, at figure.Figure) bool {
	if a.Figure == nil || math.IsNaN(a.Figure.Limit) != math.IsNaN(at.Limit) {
		return false
	}
	was := *a.Figure
	was.Worse = at.Worse
	return !was.WorseThan(at)
}
