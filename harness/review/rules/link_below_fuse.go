package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var linkBelowFuse = &Rule{
	Name:  "link-below-fuse",
	Title: "the link between batteries in series carries less than a fuse behind them lets through",
	Says:  "link thinner than the fuse needs",
	Doc: "What any circuit takes out of batteries in series goes through each of their links, which no fuse stands before: they are part of the " +
		"battery. Each must be good for the rating of the largest fuse that comes first behind the posts, the fuses of links to other batteries among them, " +
		"and for a start of the engine by the starter that the charging names, or the library's where the design has none. One finding for each battery. " +
		"The current in use is judged by wire-over-current, as of any wire. A short of the link itself nothing clears: it is short, and its ends are covered.",
	Formula: "rating of the fuse ≤ share × allowed current of the link; time of a start ≤ time in which the starter's current brings it to its class",
	Limits:  "the practice's fuse share of wire, and its most fuse share of wire; the time that the starter is on",
	Why:     "the fuse lets through what burns the link, on top of the batteries",
	Change:  "make the link as thick as the thickest cable at the posts",
	Severity: "danger; advice up to the practice's most share of the allowed current (1.5), or up to what the wire carries at its class, " +
		"and of a starter that is assumed",
	Source: "common practice, no source: the link of batteries in series is as thick as the cables at their posts",
	Bad: `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 6 mΩ, in series: 2, link: {size: 1 mm², length: 100 mm}, at: battery tray}
fuses:
  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 30 A, at: rear, fed by: lamp fuse, wire: {size: 6 mm²}, returns to: frame, return wire: {size: 6 mm²}, stays live: "marks the parked machine", own switch: true}
`,
	Mended: []string{"size: 1 mm²", "size: 16 mm²"},
	Run: func(p *Pass) {
		if p.battery != nil {
			p.judgeString(p.battery.Part)
		}
		for part := range each[*design.Bank](p.facts) {
			p.judgeString(part)
		}
	},
}

func (p *Pass) judgeString(part *circuit.Part) {
	links := part.LinkWires()
	if len(links) == 0 {
		return
	}
	w, post := links[0], part.Terminal("+").Node // all are alike
	var most guard
	look := func(b *circuit.Branch) {
		if g := (guard{A: fuseRating(b), fuse: b}); g.known() && (most.fuse == nil || g.before(most)) {
			most = g
		}
	}
	p.below(post, func(b *circuit.Branch) bool {
		if b.Kind == circuit.FuseBranch {
			look(b)
		}
		return b.Kind != circuit.FuseBranch && !p.c.IsPost(b.B)
	})
	for _, b := range p.linkFuses(post) {
		look(b)
	}
	a := p.allowed(w)
	if share := p.practice.FuseWireShare; most.known() && a.known() && over(most.A, share*a.AllowedA) {
		fin := ofWire(p.letsThrough(w, most.A, finding.Danger), w)
		fin.Cause = part.Name
		atMost(&fin, "fuse rating", most.A, share*a.AllowedA, "A")
		fin.Numbers = append(fin.Numbers, a.numbers()...)
		fin.Source, fin.Unsourced = a.Source+"; "+p.limitSource("fuse share of wire", false), p.unsourced(a, most.A)
		p.say(fin, "link %s may carry %s %s; %s lets more through", w.Text(), a.textFor(most.A), a.where(), most.text())
		if fin.Severity != finding.Advice {
			return
		}
	}
	p.judgeStartOverLink(part, w)
}

// judgeStartOverLink is of a starter that the design does not have; its own is on in a situation.
func (p *Pass) judgeStartOverLink(part *circuit.Part, w *circuit.Wire) {
	if p.in.Cranking == nil || len(p.in.Cranking.Cases) == 0 || p.in.Cranking.Start.Own || part.Kind != circuit.Battery {
		return
	}
	start := p.in.Cranking.Start
	bearsS := p.laid.ToClassS(w, start.CurrentA)
	if !over(start.Seconds, bearsS) {
		return
	}
	fin := ofWire(graver(start.Assumed, finding.Danger, finding.Advice), w)
	fin.Cause, fin.Why = part.Name, "a long start heats it past what its insulation is made for"
	atMost(&fin, "time of a start", start.Seconds, bearsS, "s")
	p.say(fin, "link %s bears the %s of a start, by %s, for %s; a long start takes %s", w.Text(), amps(start.CurrentA), starterName(start),
		quantity.Format(bearsS, quantity.Duration), quantity.Plain(start.Seconds, quantity.Duration))
}
