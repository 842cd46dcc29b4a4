package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var sharedReturnThin = &Rule{
	Name:  "shared-return-thin",
	Title: "a common return is too thin for its branches' fuses together",
	Says:  "too thin for its branches' fuses",
	Doc: "The wire that leads on from a ground block, from a load that others return to, from a fuse or contact of a return, or as the one strap of a moving part, against the sum of the fuses of all the feeds that return " +
		"there, no fuse further up counted for more than its own rating. Return-below-fuse judges it " +
		"against the largest single fuse, wire-over-current against the current in normal use; wires " +
		"that those report are left out. A ground that brings back all that a fuse block feeds is, where it is thinner than the feed of that, held against the fuse before the block too, and against the fuses of its ways together where none is spare and that is less: the next load on a way may bring up to that.",
	Formula: "min(rating of a common fuse, Σ ratings of the branches' fuses) ≤ share × allowed current",
	Limits:  "the practice's fuse share of wire, and its most fuse share of wire",
	Why: "each branch stays within its fuse while the one wire that they share is overloaded: no fuse " +
		"watches it",
	Change:   "make the common return as thick as the common feed, or run two wires",
	Severity: "fault; advice up to the practice's most share of the allowed current, and against the fuse before a block alone",
	Source:   "ABYC E-11: the common negative is sized as the common positive (from memory)",
	Mend:     MendWire,
	Bad: `
grounds:
  rear bus: {kind: ground block, at: rear, limit: 60 A, returns to: battery negative, wire: {size: 1 mm², length: 700 mm}}
fuses:
  left fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}
  right fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  left lamp: {power: 20 W, behaves: resistor, at: rear, fed by: left fuse, wire: {size: 2.5 mm²}, returns to: rear bus, return wire: {size: 2.5 mm², length: 200 mm}, stays live: "marks the parked machine", own switch: true}
  right lamp: {power: 20 W, behaves: resistor, at: rear, fed by: right fuse, wire: {size: 2.5 mm²}, returns to: rear bus, return wire: {size: 2.5 mm², length: 200 mm}, stays live: "marks the parked machine", own switch: true}
`,
	Mended: []string{"size: 1 mm²", "size: 4 mm²"},
	Run: func(p *Pass) {
		feeds := p.feedsByReturn()
		for _, part := range p.c.Parts {
			if w := onlyReturn(part); w != nil && !p.judgeSharedReturn(part, w, feeds[w.Index]) {
				p.judgePanelReturn(part, w)
			}
		}
	},
}

// copperMm2 is the copper of wires side by side.
func copperMm2(wires []*circuit.Wire) (mm2 float64) {
	for _, w := range wires {
		if w.Spec.Size != nil {
			mm2 += w.Spec.Size.AreaMm2
		}
	}
	return mm2
}

// judgePanelReturn holds the minus of a panel against the fuse before the panel.
func (p *Pass) judgePanelReturn(part *circuit.Part, w *circuit.Wire) {
	ground, ok := part.Source.(*design.Ground)
	a := p.allowed(w)
	if !ok || !a.known() {
		return
	}
	for panel, block := range each[*design.Block](p.facts) {
		in := panel.Terminal("in")
		if all, _ := p.c.BringsBack(ground, block); !all || in == nil {
			continue
		}
		g := p.guards[in.Node.Index]
		if !g.known() {
			continue
		}
		protected, ways := "feed is protected by "+g.text(), waysA(block)
		if ways < g.A {
			protected = "ways' fuses let through " + quantity.Plain(ways, quantity.Current)
		}
		passes, limit := w.Branch.ShareA(min(g.A, ways)), p.practice.FuseWireShare*a.AllowedA
		if !over(passes, p.practice.FuseWireShare*a.ProvenA()) || !over(gaugeShare*copperMm2(wiresTo(in)), copperMm2(wiresFrom(w.From))) {
			continue // as thick as the plus, which says so itself
		}
		fin := ofWire(finding.Advice, w)
		atMost(&fin, "fuse of the block's feed", passes, limit, "A")
		p.say(fin, "common return %s may carry %s %s; it brings back all that %s feeds, whose %s", w.Text(), a.textFor(passes), a.where(), panel.Name, protected)
		p.standsAside(w, overloadHurtsWire, fuseOverWire, returnBelowFuse, wireOverCurrent)
		return
	}
}

// waysA is what the fuses of a block's ways let through together; +Inf where a way is spare, or has no fuse of a known rating.
func waysA(block *design.Block) (sumA float64) {
	if block.Type != nil && block.Type.Ways > len(block.Ways) {
		return math.Inf(1)
	}
	for _, way := range block.Ways {
		if way.Fuse == nil || !(way.Fuse.RatingA > 0) {
			return math.Inf(1)
		}
		sumA += way.Fuse.RatingA
	}
	return sumA
}

// onlyReturn is the wire that leads on from a ground, from a fuse or contact of a return, or
// from a load that others return to; nil for a stud that has the frame as well, and for a ground with several, which share.
func onlyReturn(part *circuit.Part) *circuit.Wire {
	if !part.InReturn && !takesReturns(part) && (part.Kind != circuit.Ground || len(part.Branches) > 0) {
		return nil
	}
	var only *circuit.Wire
	for _, t := range part.Terminals {
		for _, w := range wiresFrom(t) {
			if w.Role != circuit.ReturnWire {
				continue
			}
			if only != nil {
				return nil
			}
			only = w
		}
	}
	return only
}

// takesReturns tells of a load that another returns to.
func takesReturns(part *circuit.Part) bool {
	minus := part.Terminal("-")
	return part.Kind == circuit.Load && minus != nil && slices.ContainsFunc(minus.Wires, func(w *circuit.Wire) bool {
		return w.Role == circuit.ReturnWire && w.To == minus
	})
}

func (p *Pass) judgeSharedReturn(part *circuit.Part, w *circuit.Wire, fuses []*circuit.Branch) (reported bool) {
	a := p.allowed(w)
	if len(fuses) < 2 || !a.known() {
		return false
	}
	total, limit := w.Branch.ShareA(p.togetherA(fuses)), p.practice.FuseWireShare*a.AllowedA
	if !over(total, p.practice.FuseWireShare*a.ProvenA()) {
		return false
	}
	fin := ofWire(p.letsThrough(w, total, finding.Fault), w)
	atMost(&fin, "fuses together", total, limit, "A")
	p.say(fin, "common return %s may carry %s %s, but the %d fuses of its branches at %s let through %s together",
		w.Text(), a.textFor(total), a.where(), len(fuses), part.Name, ampsOver(total, a.AllowedA))
	p.standsAside(w, overloadHurtsWire, fuseOverWire, returnBelowFuse, wireOverCurrent)
	return true
}

// feedsByReturn lists, by wire, the fuses nearest above everything whose current
// passes, or may pass, a return wire, each once, in the order of the parts.
func (p *Pass) feedsByReturn() [][]*circuit.Branch {
	list := make([][]*circuit.Branch, len(p.c.Wires))
	type passing struct{ fuse, wire *circuit.Branch }
	seen := map[passing]bool{}
	for _, load := range p.partsOf(circuit.Load) {
		b, minus := loadBranch(load), load.Terminal("-")
		if b == nil || minus == nil {
			continue
		}
		for _, f := range p.guards[b.A.Index].all() {
			for back := range p.c.WaysHome(b.A, minus.Node) {
				if back.Wire != nil && !seen[passing{f, back}] {
					seen[passing{f, back}] = true
					list[back.Wire.Index] = append(list[back.Wire.Index], f)
				}
			}
		}
	}
	return list
}

// togetherA is what several fuses let through at once: the sum of their
// ratings, but behind a common fuse no more than its rating.
func (f *facts) togetherA(fuses []*circuit.Branch) float64 {
	sum := map[*circuit.Branch]float64{} // of what stands behind a fuse, itself included
	below := map[*circuit.Branch][]*circuit.Branch{}
	linked := map[*circuit.Branch]bool{}
	for _, b := range fuses {
		sum[b] = fuseRating(b)
		for ; b != nil && !linked[b]; b = f.above(b) {
			linked[b] = true
			below[f.above(b)] = append(below[f.above(b)], b)
		}
	}
	var through func(b *circuit.Branch) float64
	through = func(b *circuit.Branch) float64 {
		total := sum[b]
		for _, next := range below[b] {
			total += through(next)
		}
		if b != nil && fuseRating(b) > 0 {
			return min(total, fuseRating(b))
		}
		return total
	}
	return through(nil)
}
