package rules

import (
	"fmt"
	"strings"

	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var fuseUnderLoad = &Rule{
	Name:  "fuse-under-load",
	Title: "a fuse is too small for the current it carries continuously",
	Doc: "The largest current of each fuse over all situations, at nominal values and in the worst case, " +
		"against what it may carry without ageing where it is. The practice's share is a margin for tolerances: it holds " +
		"at nominal; in the worst case the maker's share alone holds, as advice, which sizing heeds where that is likely too, " +
		"but for motors on for minutes at most, whose full pull lasts moments, and for what is given at its highest. It is for continuous load: of loads on for less than " +
		"three hours at once the rating bears all. A fuse that carries " +
		"current only while a `momentary` switch is held is judged by its rating. " +
		"Starting current is fuse-inrush; loads that no situation turns on together are " +
		"feed-fuse-under-branches. Factory fuses are judged by tap-over-spare.",
	Formula: "current ≤ rating × the smaller of the practice's load share and the maker's share at " +
		"the ambient",
	Limits: "the practice's load share of fuse; the fuse type's re-rating table",
	Why:    "run at its limit a fuse ages and opens on a warm day without any fault",
	Change: "fit the next larger fuse the wire allows, or share the loads between two fuses",
	Severity: "fault; danger when the current exceeds the rating and a critical load depends on the " +
		"fuse; advice when only the worst case passes the maker's share",
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
			if fuseRating(b) > 0 {
				p.judgeUnderLoad(b)
			}
		}
	},
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

// underLoad holds a fuse's current against what it bears.
func (p *Pass) underLoad(b *circuit.Branch) verdict {
	return p.held("load share of fuse", p.cornerAmps(b), figure.Larger, p.continuousA(b, 0), p.makersA(b, p.ambientRiseK()),
		func(c cornered) finding.Severity {
			return graver(c.decisive() > fuseRating(b) && anyCritical(p.drawsBelow(b.B)), finding.Fault, finding.Danger)
		})
}

func (p *Pass) judgeUnderLoad(b *circuit.Branch) {
	v := p.underLoad(b)
	if v.severity == 0 {
		return
	}
	at := b.Device(0)
	if v.by == corner.AtWorst {
		at = b.Device(p.ambientRiseK())
	}
	fin := ofFuse(v.severity, b)
	fin.What = fmt.Sprintf("%s carries %s; at %s it may carry %s continuously",
		fuseText(b), v.split(amps), celsius(at.AmbientC), amps(v.limit))
	if p.onlyHeld(b) {
		fin.What = strings.TrimSuffix(fin.What, " continuously")
	}
	v.decides(&fin, "current", figure.Larger, 1, v.limit, "A")
	if p.agesLikely(b, v) {
		fin.Leave = false
	}
	fin.Source = p.limitSource("load share of fuse", false)
	p.report(fin)
}

// agesLikely tells whether the tolerances are likely to load a fuse past what its maker
// lets it carry: the trade fits the next rating then. What is on for a time has no other
// margin, and a filament lamp may take a quarter more than it says.
func (p *Pass) agesLikely(b *circuit.Branch, v verdict) bool {
	return over(v.Likely, p.makersA(b, 0)) && !p.onlyHeld(b) && !p.margined(b)
}
