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
	Says:  "the wrong cover for its place",
	Doc: "The cover of each run with wires in it: it must withstand the hottest air of the run and of the places at its " +
		"ends, and must bend where the run flexes or leads to what moves. What passes a place hotter than " +
		"100 °C needs a heat-shielding cover; past anything above 70 °C it must not be bare. On a boat a run to a wet place needs one that takes up no water. Chafing and pinching are chafing-run's, a run that flexes bare flexing-run's.",
	Formula:  "ambient of the run ≤ highest temperature of the cover",
	Limits:   "highest temperature, `stiff`, `heat` and `absorbs` of the cover in the library; 100 °C and 70 °C (common practice, no source)",
	Why:      "a cover that softens sticks to the wires and drips off, a stiff one cracks at the bend and its edge cuts them",
	Change:   "use a cover rated for the heat, or a flexible one, or route the run elsewhere",
	Severity: "fault; advice where only protection from heat is missing, or the cover takes up water",
	Source:   "which cover withstands what: common practice, no source",
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
		fin := p.ofRun(finding.Fault, b, fmt.Sprintf("is in %s, rated to %s, and reaches %s", c.Name, most, value))
		atMost(&fin, "ambient", hot, c.MaxC, "°C")
		p.report(fin)
	} else if wants := p.heatFrom(r); over(hot, wants) && (c == nil || !c.Heat) {
		fin := p.ofRun(finding.Advice, b, fmt.Sprintf("is in %s, and %s is no heat shield", celsius(hot), coverText(b)))
		fin.Leave = true // where the heat comes from is not known: it may be the air alone
		fin.Change = "route the run elsewhere, or put a heat sleeve over it"
		atMost(&fin, "ambient", hot, wants, "°C")
		p.report(fin)
	}
	if p.practice.Afloat && r.Cover != nil && r.Cover.Absorbs && (r.From.Wet || r.To.Wet) {
		fin := p.ofRun(finding.Advice, b, "leads to a wet place, and "+r.Cover.Name+" takes up water and holds it")
		fin.Change = "use a cover that takes up no water"
		p.report(fin)
	}
	if r.Cover != nil && r.Cover.Stiff && bends(b) {
		p.reportRun(b, "flexes in use, and "+r.Cover.Name+" is rigid")
	}
}
