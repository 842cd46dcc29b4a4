package rules

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
)

// missingOfConditions reports conditions with which nothing of the vehicle's own draws: its
// main beam or brake lamps are then in no balance.
func (p *Pass) missingOfConditions() {
	if !p.d.Charging.Present() {
		return
	}
	for _, w := range p.d.Conditions {
		draws := func(l *design.VehicleLoad) bool { return slices.Contains(l.While, w) }
		at := slices.IndexFunc(p.d.Taps, func(t *design.Tap) bool { return t.Hot == w })
		if at < 0 || slices.ContainsFunc(p.d.VehicleLoads, draws) {
			continue
		}
		t := p.d.Taps[at]
		p.reportMissing(t.Name, t.Pos, fmt.Sprintf("what the vehicle itself draws with %s is not given: none of its loads is `when: %s`", w, w))
	}
}
