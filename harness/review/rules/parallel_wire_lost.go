package rules

import (
	"fmt"

	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var parallelWireLost = &Rule{
	Name:  "parallel-wire-lost",
	Title: "with one of several wires side by side lost, the rest carry too much",
	Says:  "the rest carry too much if one comes loose",
	Doc: "Of wires side by side (`parallel`) the first is lost, as by a lug that works loose, in every situation, and the whole is solved again. " +
		"Reported when one that stays then carries more than it may continuously. Neither the fuse nor the load tells: both see the same current. " +
		"Together such wires are held against their fuse by fuse-over-wire and return-below-fuse, each with its share.",
	Formula: "current in each of the rest, one open ≤ allowed current",
	Limits:  "heat balance, or the practice's current table where it has one",
	Why:     "the wire that is left heats beyond its insulation behind a fuse that both were to share",
	Change: "bolt both lugs on one stud each side, check their torque and that a clamp reads the same on each wire, or use one " +
		"wire thick enough",
	Severity: "advice: it is a suspicion",
	Source: "NFPA 70 310.10(G): conductors in parallel are of one length, material, size and insulation and end alike, none smaller than " +
		"1/0 AWG (from memory; smaller ones are usual at 12 V, common practice, no source)",
	Bad: `
fuses:
  winch fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
loads:
  winch: {current: 16 A, behaves: resistor, at: rear, fed by: winch fuse, wire: {size: 1.5 mm², parallel: 2}, returns to: frame, return wire: {size: 6 mm²}, stays live: "worked while parked", own switch: true}
charging: {regulated: 14.3 V, output: {1300 rpm: 37 A, 3000 rpm: 40 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`,
	Mended: []string{"size: 1.5 mm², parallel: 2", "size: 6 mm²"},
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, a := range p.in.Faults.Abreast {
			if a.Left != nil && p.allowed(a.Left).known() && over(a.AfterA, p.allowed(a.Left).AllowedA) {
				p.reportLeft(a)
			}
		}
	},
}

func (p *Pass) reportLeft(lost *fault.Abreast) {
	w := lost.Left
	a, n := p.allowed(w), len(w.Parallel())
	fin := ofWire(finding.Advice, w)
	fin.Leave, fin.Situation = true, lost.Situation.Name
	atMost(&fin, "current, one lost", lost.AfterA, a.AllowedA, "A")
	fin.What = fmt.Sprintf("with %s lost, one of %d side by side, %s carries %s but may carry %s %s", lost.Lost.Number, n, w.Text(),
		ampsOver(lost.AfterA, a.AllowedA), a.textFor(lost.AfterA), a.where())
	p.report(fin)
}
