package rules

import (
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var linkEndUnfused = &Rule{
	Name:  "link-end-unfused",
	Title: "the link between two batteries is not fused at a further battery",
	Says:  "no fuse at its battery's end",
	Doc: "What feeds a further battery is followed from that battery's post towards the first one, contacts counted as closed, to the " +
		"first fuse. The same way from the first battery is unfused-conductor's, and so is a fuse meant for this end that is too far from it.",
	Formula:  "sum of the wire lengths from the battery's post to the first fuse",
	Limits:   "twice the practice's fuse distance, bare or sheathed; `limits: fuse distance` of the design",
	Why:      "a link is fed from both ends: the fuse at the far end opens, and the battery at this one burns the cable",
	Change:   "put a second fuse of the link's cable at this battery",
	Severity: "danger without a fuse; with one too far away as fuse-too-far",
	Source: "33 CFR 183.455(b) and 46 CFR 111.50-5(a): a device where a conductor receives its supply (two sources); both ends of a " +
		"charging link: makers' instructions of voltage-sensing relays, common practice",
	Bad: `
batteries:
  house: {chemistry: AGM, capacity: 14 Ah, resistance: 30 mΩ, at: rear, fed by: charging relay, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
relays:
  charging relay: {form: voltage-sensing relay, at: rear, fed by: start end, wire: {size: 4 mm²}, coil: {returns to: frame, return wire: {size: 1 mm²}}}
`,
	Mended: []string{"fed by: charging relay", "fed by: house end", "relays:",
		"  house end: {type: blade C, rating: 20 A, at: rear, fed by: charging relay, wire: {size: 4 mm²}}\nrelays:"},
	Run: func(p *Pass) {
		if p.linked == nil {
			return
		}
		for _, b := range p.linked.First() {
			e := p.linkAbove(b, len(p.c.Branches))
			switch {
			case b.Wire == nil:
			case e.unfused:
				fin := ofWire(finding.Danger, b.Wire)
				decidedBy(&fin, "unfused length", e.farM, "m", figure.Larger)
				p.say(fin, "%s has no fuse on the side of %s", b.Wire.Text(), b.Wire.To.Part.Name)
			case p.isOtherEnds(b.Wire, e):
				p.judgeLinkDistance(b.Wire, e)
			}
		}
	},
}

// linkWay is the way from a further battery to its first fuses.
type linkWay struct {
	farM     float64
	unfused  bool // some way reaches another battery, or an end, without one
	sheathed bool // all of it
}

// isOtherEnds tells of a way whose first fuse is so far away that it is no fuse of this end: at
// more than twice the limit (our choice).
func (p *Pass) isOtherEnds(w *circuit.Wire, e linkWay) bool {
	limit, _, _, _ := p.fuseDistances(w, e.sheathed)
	return over(e.farM, 2*limit)
}

func (p *Pass) judgeLinkDistance(w *circuit.Wire, e linkWay) {
	p.judgeDistance(w, e.farM, e.sheathed, " to its fuse from the post of "+w.To.Part.Name)
}

// linkAbove follows a branch towards what feeds it.
func (p *Pass) linkAbove(b *circuit.Branch, most int) linkWay {
	if b.Kind == circuit.FuseBranch {
		return linkWay{sheathed: true}
	}
	way := linkWay{sheathed: true}
	if up := b.A.FedBy(); p.c.IsPost(b.A) || len(up) == 0 || most == 0 {
		way.unfused = true
	} else {
		for _, x := range up {
			w := p.linkAbove(x, most-1)
			way = linkWay{max(way.farM, w.farM), way.unfused || w.unfused, way.sheathed && w.sheathed}
		}
	}
	if b.Wire != nil {
		way.farM += b.Wire.LengthM
		way.sheathed = way.sheathed && b.Wire.Spec.Sheathed
	}
	return way
}
