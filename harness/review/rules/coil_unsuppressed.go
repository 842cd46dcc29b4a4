package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var coilUnsuppressed = &Rule{
	Name:  "coil-unsuppressed",
	Title: "a relay's coil is not suppressed",
	Says:  "coil not suppressed",
	Doc: "A coil whose design says `suppressed by: none`. A design that does not say is data-missing. " +
		"When the coil is fed from a supervised tap the finding is more severe: a solid-state output switches it.",
	Formula: "none",
	Limits:  "none",
	Why: "switching the coil off gives a spike of several hundred volts that ages switches and " +
		"kills electronics",
	Change: "use a relay with a resistor or diode built in; 86 must be the positive side with a " +
		"diode",
	Severity: "advice; fault on a supervised tap",
	Source:   "relay coil suppression, application note: 1000 to 1500 V without (one source)",
	Bad: `
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: none, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"by: none", "by: resistor"},
	Run: func(p *Pass) {
		for part, r := range each[*design.Relay](p.facts) {
			if r.Coil.Suppressed != "none" {
				continue
			}
			p.say(ofPart(graver(p.supervisedAbove(part) != nil, finding.Advice, finding.Fault), part),
				"the coil of %s has no suppression", part.Name)
		}
	},
}

// supervisedAbove is the supervised tap that a relay's coil is fed from, of several
// the first by name; nil when there is none.
func (p *Pass) supervisedAbove(relay *circuit.Part) *circuit.Part {
	var first *circuit.Part
	for _, tap := range p.tapsAbove(relay) {
		if t, _ := tap.Source.(*design.Tap); t != nil && t.Supervised && (first == nil || tap.Name < first.Name) {
			first = tap
		}
	}
	return first
}

// tapsAbove lists the taps that can feed a relay's coil.
func (p *Pass) tapsAbove(relay *circuit.Part) []*circuit.Part {
	coil := p.coilOf[relay.Index]
	if coil == nil {
		return nil
	}
	p.markNumber++
	p.mark[coil.A.Index] = p.markNumber
	var taps []*circuit.Part
	queue := []*circuit.Node{coil.A}
	for len(queue) > 0 {
		n := queue[0]
		queue = queue[1:]
		for _, b := range n.Branches {
			if b.B != n || !b.Feeds() {
				continue
			}
			if b.Part != nil && b.Part.Kind == circuit.Tap { // also a second one from the same node
				taps = append(taps, b.Part)
				continue
			}
			if p.mark[b.A.Index] == p.markNumber {
				continue
			}
			p.mark[b.A.Index] = p.markNumber
			queue = append(queue, b.A)
		}
	}
	return taps
}
