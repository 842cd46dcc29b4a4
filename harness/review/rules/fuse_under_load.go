package rules

import (
	"fmt"
	"strings"

	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseUnderLoad = &Rule{
	Name:  "fuse-under-load",
	Title: "a fuse is too small for the current it carries continuously",
	Doc: "The largest current of each fuse over all situations, at nominal values and in the worst case, " +
		"against what it may carry without ageing where it is as hot as in the worst case. A fuse that carries " +
		"current only while a `momentary` switch is held is judged by its rating. " +
		"Starting current is fuse-inrush; loads that no situation turns on together are " +
		"feed-fuse-under-branches. Factory fuses are judged by tap-over-spare.",
	Formula: "current ≤ rating × the smaller of the practice's load share and the maker's share at " +
		"the ambient",
	Limits: "the practice's load share of fuse; the fuse type's re-rating table",
	Why:    "run at its limit a fuse ages and opens on a warm day without any fault",
	Change: "fit the next larger fuse the wire allows, or share the loads between two fuses",
	Severity: "fault; danger when the current exceeds the rating and a critical load depends on the " +
		"fuse",
	Source: "makers' data sheets, blade fuses 32 V: continuous load against ambient (one source); " +
		"the share is from memory",
	Mend:  MendFuse,
	InUse: true,
	Bad: `
fuses:
  heat fuse: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  warm vest: {power: 33 W, behaves: resistor, at: rear, fed by: heat fuse, wire: {size: 1.5 mm²}, returns to: frame}
`,
	Mended: []string{"rating: 3 A", "rating: 5 A"},
	Run: func(p *Pass) {
		for _, b := range p.fuses() {
			if p.underLoad(b) {
				p.reportUnderLoad(b)
			}
		}
	},
}

// underLoad tells whether a fuse carries more in some situation than it bears.
func (f *facts) underLoad(b *circuit.Branch) bool {
	return fuseRating(b) > 0 && over(f.cornerAmps(b).Corner, f.continuousA(b, f.ambientRiseK()))
}

// anyCritical tells whether one of the loads is critical.
func anyCritical(draws []*circuit.Branch) bool {
	for _, b := range draws {
		if b.Load != nil && b.Load.Load != nil && b.Load.Load.Critical {
			return true
		}
	}
	return false
}

func (p *Pass) reportUnderLoad(b *circuit.Branch) {
	w, limit := p.cornerAmps(b), p.continuousA(b, p.ambientRiseK())
	grave := w.Corner > fuseRating(b) && anyCritical(p.drawsBelow(b.B))
	fin := ofFuse(graver(grave, finding.Fault, finding.Danger), b)
	fin.What = fmt.Sprintf("%s carries %s; at %s it may carry %s continuously",
		fuseText(b), w.split(amps), celsius(b.Part.AmbientC()+p.ambientRiseK()), amps(limit))
	if p.onlyHeld(b) {
		fin.What = strings.TrimSuffix(fin.What, " continuously")
	}
	w.decides(&fin, "current", figure.Larger, 1, limit, "A")
	fin.Situation = w.in.Name
	fin.Source = p.limitSource("load share of fuse", false)
	p.report(fin)
}
