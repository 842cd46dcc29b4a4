package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseTooFar = &Rule{
	Name:  "fuse-too-far",
	Title: "the first fuse is too far from the source",
	Says:  "first fuse too far away",
	Doc: "The length of conductor from the battery's positive post, or from where it leaves a starter cable, to the first fuse, splices and " +
		"contacts on the way counted in; from a further battery's post towards what charges it too. A conductor that is sheathed from end to end has the longer " +
		"limit. A conductor that never meets a fuse is unfused-conductor, and link-end-unfused at a further battery.",
	Formula: "sum of the wire lengths from the source to the first fuse",
	Limits: "the practice's fuse distance, bare or sheathed, and its most and grave fuse distances; " +
		"`limits: fuse distance` of the design",
	Why: "no fuse protects this stretch: chafed against metal it burns until the battery is " +
		"empty",
	Change: "shorten the stretch to the limit or move the fuse to the battery, or run it in a sheath " +
		"or conduit from end to end",
	Severity: "fault; bare on vehicles advice up to 300 mm, danger at more than 1 m; else danger at more than twice the limit; sheathed on " +
		"boats advice up to 72 in from a battery post, where no petrol vapour can gather",
	Source: "33 CFR 183.455(b): 7 in along the conductor, 40 in when sheathed; ABYC E-11: 72 in sheathed from a battery post (two sources each)",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 2 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 400 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Mended: []string{"length: 400 mm", "length: 400 mm, sheathed: true"},
	Run: func(p *Pass) {
		for _, u := range p.unfusedWires() {
			if u.fused {
				p.judgeFuseDistance(u)
			}
		}
		if p.linked == nil {
			return
		}
		for _, b := range p.linked.First() {
			if e := p.linkAbove(b, len(p.c.Branches)); b.Wire != nil && !e.unfused && !p.isOtherEnds(b.Wire, e) {
				p.judgeLinkDistance(b.Wire, e)
			}
		}
	},
}

func (p *Pass) judgeFuseDistance(u unfusedWire) {
	p.judgeDistance(u.wire, u.lengthM, p.sheathedToFuse(u.wire), " from the start of "+u.wire.Text())
}

// judgeDistance holds a length of conductor that no fuse protects against the limits.
func (p *Pass) judgeDistance(wire *circuit.Wire, lengthM float64, sheathed bool, where string) {
	limit, most, grave, given := p.fuseDistances(wire, sheathed)
	if !over(lengthM, limit) {
		return
	}
	first := *wire
	first.Spec.Sheathed = sheathed
	severity := graver(over(lengthM, most), finding.Advice, finding.Fault)
	fin := ofWire(graver(over(lengthM, grave), severity, finding.Danger), wire)
	atMost(&fin, "unfused length", lengthM, limit, "m")
	fin.Source = p.limitSource(fuseDistanceKey(&first), given)
	if fin.Severity == finding.Advice && first.Spec.Sheathed {
		fin.Source += "; " + p.limitSource("most fuse distance sheathed mm", false)
	}
	if first.Spec.Sheathed {
		fin.Change = "move the fuse towards the battery: in its sheath the stretch has the longer limit already"
	}
	p.say(fin, "%s unfused%s; the limit is %s", p.length(lengthM), where, p.length(limit))
}

// fuseDistances are how far from a source the first fuse may be, how far is advice, and beyond
// what it is danger; the limits are of what is bare, if any of the way is.
func (p *Pass) fuseDistances(wire *circuit.Wire, sheathed bool) (limit, most, grave float64, given bool) {
	first := *wire
	first.Spec.Sheathed = sheathed
	limit, given = p.c.FuseDistanceM(&first)
	most, grave = limit, 2*limit
	switch {
	case given:
	case !sheathed:
		most, grave = p.practice.MostFuseDistanceM, p.practice.GraveFuseDistanceM
	case (p.c.IsPost(wire.From.Node) || p.c.IsPost(wire.To.Node)) && !p.d.PetrolVapour():
		most = p.practice.MostFuseDistanceSheathedM
	}
	return limit, most, grave, given
}

// sheathedToFuse tells whether every wire from the source to the first fuses lies in a
// sheath.
func (p *Pass) sheathedToFuse(first *circuit.Wire) bool {
	w := &exposureWalk{f: p.facts}
	seen := map[*circuit.Node]bool{}
	var bare func(b *circuit.Branch) bool
	bare = func(b *circuit.Branch) bool {
		if b.Wire != nil && !b.Wire.Spec.Sheathed {
			return true
		}
		if seen[b.B] {
			return false
		}
		seen[b.B] = true
		for _, on := range b.B.Branches {
			if w.follows(on, b.B) && on.Kind != circuit.FuseBranch && bare(on) {
				return true
			}
		}
		return false
	}
	return !bare(first.Branch)
}

func fuseDistanceKey(w *circuit.Wire) string {
	if w.Spec.Sheathed {
		return "fuse distance sheathed mm"
	}
	return "fuse distance mm"
}
