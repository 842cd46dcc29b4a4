package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
)

var backFeed = &Rule{
	Name:  "back-feed",
	Title: "a fuse is bypassed by another feed",
	Doc: "Wherever two feeds meet, each fuse above is taken out in turn: when its load side is still " +
		"joined to the battery through the other feed, it protects nothing. Contacts count as closed, " +
		"the make and the break contacts of relays not at once. Two feeds from the same fuse are fine. " +
		"Ways through a load are not looked at here.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "when the fuse blows, the fault goes on being fed through the other way, and a circuit taken for dead is live",
	Change:   "give the part one feed, or use a change-over contact so that only one feed can reach it",
	Severity: "danger always",
	Source:   "46 CFR 111.50-3(d): protective devices not in parallel with one another (one source)",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  spare fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: [lamp fuse, spare fuse], wire: {size: 1 mm²}, returns to: frame}
`,
	Good: `
splices:
  left: {at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  right: {at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: [left, right], wire: {size: 1 mm², length: 50 mm}, returns to: frame}
`,
	Run: func(p *Pass) {
		for _, t := range p.meetingPoints() {
			p.judgeMeeting(t)
		}
	},
}

// meetingPoints lists the terminals at which more than one feed ends.
func (p *Pass) meetingPoints() []*circuit.Terminal {
	var list []*circuit.Terminal
	for _, part := range p.c.Parts {
		for _, t := range part.Terminals {
			if feedsInto(t) > 1 {
				list = append(list, t)
			}
		}
	}
	return list
}

func feedsInto(t *circuit.Terminal) int {
	n := 0
	for _, w := range t.Wires {
		if w.To == t && !isReturn(w) {
			n++
		}
	}
	return n
}

func (p *Pass) judgeMeeting(t *circuit.Terminal) {
	var bypassed []string
	for _, fuse := range p.fusesAbove(t.Node) {
		if p.bypassed(fuse) {
			bypassed = append(bypassed, fuse.Name)
		}
	}
	if len(bypassed) == 0 {
		return
	}
	feeds := wiresTo(t)
	fin := ofWire(finding.Danger, feeds[len(feeds)-1])
	fin.What = fmt.Sprintf("%s is fed %d ways, so fuse %s can be bypassed by another feed",
		t.Part.Name, len(feeds), list(bypassed))
	p.report(fin)
}

// fusesAbove walks from a node towards the source and lists the fuses on the way.
func (p *Pass) fusesAbove(n *circuit.Node) []*circuit.Branch {
	p.markNumber++
	p.mark[n.Index] = p.markNumber
	var fuses []*circuit.Branch
	queue := []*circuit.Node{n}
	for len(queue) > 0 {
		n := queue[0]
		queue = queue[1:]
		for _, b := range n.Branches {
			if b.B != n || !b.Feeds() || p.mark[b.A.Index] == p.markNumber {
				continue
			}
			if b.Kind == circuit.FuseBranch {
				fuses = append(fuses, b)
			}
			p.mark[b.A.Index] = p.markNumber
			queue = append(queue, b.A)
		}
	}
	return fuses
}

// bypassed tells whether a fuse's load side stays joined to the source without
// it. The answer is kept, since a fuse may stand above many meeting points.
func (p *Pass) bypassed(fuse *circuit.Branch) bool {
	known, ok := p.bypass[fuse]
	if !ok {
		known = p.findBypass(fuse)
		p.bypass[fuse] = known
	}
	return known
}

func (p *Pass) findBypass(fuse *circuit.Branch) bool {
	for _, relaysAtRest := range []bool{false, true} {
		reached := p.flood(p.positive, func(b *circuit.Branch) bool {
			if b == fuse || !b.Feeds() {
				return false
			}
			c := b.Closer
			return c == nil || relaysAtRest && c.Coil == nil || !relaysAtRest && c.Break == nil
		})
		if reached[fuse.B.Index] {
			return true
		}
	}
	return false
}
