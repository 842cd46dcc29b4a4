package rules

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var alwaysHotConductor = &Rule{
	Name:  "always-hot-conductor",
	Title: "a conductor is live with the key off and feeds nothing",
	Says:  "live with the key off, feeds nothing",
	Doc: "A feed wire that is live with every contact open and the key off, below which there is no " +
		"load, coil or contact at all: it ends at unused ways, an unused fuse or a loose end. A wire " +
		"that leads to nothing but contacts is not reported, nor one that leads to a load: " +
		"that is live-with-key-off. `stays live` on a part the wire passes or ends at excuses it.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "a live end that nobody uses is only waiting to chafe or be bridged by a spanner",
	Change:   "take the wire out, feed it behind the key, or give the reason as `stays live`",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  later fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  later fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}, stays live: "feed of next season's compressor, capped"}
`,
	Run: func(p *Pass) {
		if p.positive == nil {
			return
		}
		live, busy := p.live(untouched, p.excused), p.busyBelow()
		top := map[*circuit.Wire]*circuit.Wire{} // of a wire that feeds nothing, the first such wire above it
		for _, w := range p.c.Wires {
			if isReturn(w) || top[w] != nil || !live.nodes[w.From.Node.Index] || staysLive(w.To.Part) {
				continue
			}
			if !busy[w.To.Node.Index] {
				for _, v := range append(p.wiresBelow(w), w) {
					top[v] = w
				}
			}
		}
		for _, w := range p.c.Wires {
			if top[w] == nil {
				continue
			}
			fin := ofWire(finding.Advice, w)
			fin.Cause = wireOwner(top[w]).Name
			p.say(fin, "%s is live with the key off and feeds nothing", w.Text())
		}
	},
}

// busyBelow marks the nodes below which something draws or switches.
func (p *Pass) busyBelow() []bool {
	busy := make([]bool, len(p.c.Nodes))
	var queue []*circuit.Node
	mark := func(n *circuit.Node) {
		if !busy[n.Index] {
			busy[n.Index] = true
			queue = append(queue, n)
		}
	}
	for _, b := range p.c.Branches {
		cable := b.Kind == circuit.ChargerBranch && b.A != p.positive // what the engine charges through
		if cable || b.Kind != circuit.BatteryBranch && b.Kind != circuit.ChargerBranch && p.drawsOrSwitches(b) {
			mark(b.A)
		}
	}
	for _, post := range p.c.Posts()[1:] { // what charges a battery has its use
		mark(post)
	}
	for len(queue) > 0 {
		n := queue[0]
		queue = queue[1:]
		for _, b := range n.FedBy() {
			mark(b.A)
		}
	}
	return busy
}

func (p *Pass) drawsOrSwitches(b *circuit.Branch) bool {
	return b.Kind == circuit.LoadBranch || p.coils[b] != nil || b.Closer != nil || p.excused(b) ||
		b.Wire != nil && isReturn(b.Wire)
}

// wiresBelow lists the wires below a wire.
func (p *Pass) wiresBelow(w *circuit.Wire) (list []*circuit.Wire) {
	p.below(w.To.Node, func(b *circuit.Branch) bool {
		if b.Wire != nil {
			list = append(list, b.Wire)
		}
		return true
	})
	return list
}
