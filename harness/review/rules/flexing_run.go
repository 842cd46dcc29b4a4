package rules

import (
	"fmt"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var flexingRun = &Rule{
	Name:  "flexing-run",
	Title: "a flexing run is not covered",
	Says:  "bare where it flexes",
	Doc: "A run that flexes, or that leads to a place that moves, with wires in it and no sleeve, " +
		"conduit or tape over it.",
	Formula: "none",
	Limits:  "none",
	Why: "bent thousands of times against its neighbours, insulation wears through at the " +
		"sharpest bend",
	Change:   "put a braided sleeve over the run and leave slack at both ends of its travel",
	Severity: "fault",
	Source:   "common practice, no source",
	Mend:     MendWire,
	Bad: `
runs:
  - {from: battery tray, to: rear, length: 600 mm, flexes: yes}
`,
	Mended: []string{"flexes: yes", "flexes: yes, cover: braided sleeve"},
	Run: func(p *Pass) {
		for _, b := range p.c.Bundles {
			if len(b.Wires) > 0 && b.Run.Cover == nil && bends(b) {
				p.reportRun(b, "flexes in use and has no sleeve or conduit")
			}
		}
	},
}

// bends tells whether a run is bent in use: it flexes, or leads to what moves.
func bends(b *circuit.Bundle) bool {
	return b.Run.Flexes || b.Run.From != nil && b.Run.From.Moves || b.Run.To != nil && b.Run.To.Moves
}

// reportRun reports a fault of a run, which goes by its name.
func (p *Pass) reportRun(b *circuit.Bundle, what string) { p.report(p.ofRun(finding.Fault, b, what)) }

func (p *Pass) ofRun(s finding.Severity, b *circuit.Bundle, what string) finding.Finding {
	return finding.Finding{Severity: s, Part: b.Run.Name, Ref: b.Run.Name, Pos: b.Run.Pos,
		What: fmt.Sprintf("run %q with %s in it %s",
			b.Run.Name, wording.Count(len(b.Wires), "wire", "wires"), what)}
}
