package rules

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// feedsFitted tells whether the vehicle's own part is in the design, fitted and fed by a tap
// that is live with a condition.
func (f *facts) feedsFitted(w design.When) bool {
	return slices.ContainsFunc(f.d.Taps, func(t *design.Tap) bool {
		return t.Hot == w && slices.ContainsFunc(f.drawsBelow(f.c.PartOf(t).Terminals[0].Node), func(b *circuit.Branch) bool {
			return b.Load != nil && b.Part.Fitted
		})
	})
}

// missingOfConditions reports conditions with which nothing of the vehicle's own draws: its
// main beam or brake lamps are then in no balance.
func (p *Pass) missingOfConditions() {
	if !p.d.Charging.Present() {
		return
	}
	for _, w := range p.d.Conditions {
		draws := func(l *design.VehicleLoad) bool { return slices.Contains(l.While, w) }
		at := slices.IndexFunc(p.d.Taps, func(t *design.Tap) bool { return t.Hot == w })
		if at < 0 || slices.ContainsFunc(p.d.VehicleLoads, draws) || p.feedsFitted(w) {
			continue
		}
		t := p.d.Taps[at]
		p.reportMissing(t.Name, t.Pos, fmt.Sprintf("what the vehicle itself draws with %s is not given: none of its loads is `when: %s`", w, w))
	}
}
