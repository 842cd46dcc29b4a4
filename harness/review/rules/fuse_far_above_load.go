package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseFarAboveLoad = &Rule{
	Name:  "fuse-far-above-load",
	Title: "a fuse is far larger than its loads need",
	Says:  "far larger than its load",
	Doc: "Fuses of more than 15 A that are the nearest upstream of an accessory of which the design gives neither the largest fuse nor its lead " +
		"(those are fuse-over-accessory's) and whose wire suits the fuse, against the sum of what all accessories and coils behind it draw at once, a start that lasts for a second or more counted with its peak. Sockets count with their rating. " +
		"The load of a fuse in the link between two batteries is the charge that passes it: it is left out.",
	Formula:  "rating ≤ 5 × Σ rated currents behind the fuse",
	Limits:   "5 times; 15 A, which a usual lead of 0.75 mm² carries: common practice, no source",
	Why:      "the wire is protected, but the accessory's own thin lead and its board smoulder at currents the fuse lets through",
	Change:   "fit the smallest fuse that carries the load and its start, or give the accessory's `lead` or `maximum fuse`",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 32 A, spare: 20 A, supervised: no}
fuses:
  lamp fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
`,
	Mended: []string{"rating: 20 A", "rating: 10 A"},
	Run: func(p *Pass) {
		before := map[*circuit.Branch]bool{} // fuses that are the nearest before such an accessory
		for _, part := range p.partsOf(circuit.Load) {
			l, b := accessory(part), loadBranch(part)
			if l == nil || b == nil || l.MostFuseA.Given() || l.Lead.AreaMm2.Given() {
				continue
			}
			g := p.guards[b.A.Index]
			if w := feedOf(part); !g.known() || g.fuse.Fuse.Factory || !over(g.A, leadBearsA) || w == nil || p.overFused(w) {
				continue
			}
			before[g.fuse] = true
		}
		for _, fuse := range p.fuses() {
			if before[fuse] && !p.inLink(fuse) {
				p.judgeFarAbove(fuse)
			}
		}
	},
}

func (p *Pass) judgeFarAbove(fuse *circuit.Branch) {
	sum := 0.0
	for _, x := range p.drawsBelow(fuse.B) {
		sum += p.c.DrawA(x) * lastingPeak(x.Load)
	}
	if !over(fuseRating(fuse), farAbove*sum) {
		return
	}
	fin := ofFuse(finding.Advice, fuse)
	fin.Leave = true
	atMost(&fin, "fuse rating", fuseRating(fuse), farAbove*sum, "A")
	p.say(fin, "%s feeds only %s in all, and the accessory's own lead is not given", fuseText(fuse), amps(sum))
}

// farAbove is how many times what a fuse feeds its rating may be, and leadBearsA what
// the lead of any accessory bears.
const farAbove, leadBearsA = 5.0, 15.0

// lastingPeak is the multiple of its running current that a load draws for a second
// or more: a heater's glow plug.
func lastingPeak(l *circuit.LoadSpec) float64 {
	if l == nil || l.Load == nil || l.Load.Inrush.TauS < 1 {
		return 1
	}
	return l.Load.Inrush.PeakRatio
}
