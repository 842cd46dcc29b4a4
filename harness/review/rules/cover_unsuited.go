package rules

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var coverUnsuited = &Rule{
	Name:  "cover-unsuited",
	Title: "a run's cover does not suit its place",
	Says:  "a cover that does not suit it",
	Doc: "The cover of each run with wires in it: it must bear the hottest air of the run and of the places at its " +
		"ends, and must bend where the run flexes or leads to what moves. What passes a place hotter than " +
		"100 °C wants a cover that keeps heat away, and one that is bare where it passes something above 70 °C, any. Chafing and pinching are chafing-run's, a run that flexes bare flexing-run's.",
	Formula:  "ambient of the run ≤ highest temperature of the cover",
	Limits:   "highest temperature, `stiff` and `heat` of the cover in the library; 100 °C and 70 °C (common practice, no source)",
	Why:      "a cover that softens sticks to the wires and drips off, a stiff one cracks at the bend and its edge cuts them",
	Change:   "use a cover that bears the heat of the place, or that bends, or lead the run elsewhere",
	Severity: "fault; advice where only protection from heat is missing",
	Source:   "which cover bears what: common practice, no source",
	Mend:     MendWire,
	Bad: `
runs:
  - {from: battery tray, to: rear, length: 600 mm, flexes: yes, cover: rigid conduit}
`,
	Mended: []string{"rigid conduit", "corrugated conduit"},
	Run: func(p *Pass) {
		for _, b := range p.c.Bundles {
			if len(b.Wires) > 0 {
				p.judgeCover(b)
			}
		}
	},
}

// heatC is from where a run wants a cover that keeps heat away.
const heatC = 100.0

// nearC is from where one that is bare and passes something hot wants a sleeve.
const nearC = 70.0

func (p *Pass) heatFrom(r *design.Run) float64 {
	if r.Cover == nil && r.Near.Given() {
		return nearC
	}
	return heatC
}

func (p *Pass) judgeCover(b *circuit.Bundle) {
	r, hot := b.Run, circuit.RunAmbientC(b.Run)
	if c := r.Cover; c != nil && over(hot, c.MaxC) {
		value, most := quantity.Against(hot, c.MaxC, quantity.Temperature)
		fin := p.ofRun(finding.Fault, b, fmt.Sprintf("lies in %s, made for %s at most, and meets %s", c.Name, most, value))
		atMost(&fin, "ambient", hot, c.MaxC, "°C")
		p.report(fin)
	} else if wants := p.heatFrom(r); over(hot, wants) && (c == nil || !c.Heat) {
		fin := p.ofRun(finding.Advice, b, fmt.Sprintf("meets %s, and %s keeps no heat away", celsius(hot), coverText(b)))
		fin.Leave = true // where the heat comes from is not known: it may be the air alone
		fin.Change = "lead the run elsewhere, or put a heat sleeve over it"
		atMost(&fin, "ambient", hot, wants, "°C")
		p.report(fin)
	}
	if r.Cover != nil && r.Cover.Stiff && bends(b) {
		p.reportRun(b, "flexes in use, and "+r.Cover.Name+" bears no bending")
	}
}
