package bench

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

const (
	basisSensing = "sensing relays: the volts at which the library's form closes and opens, 1.5 % either way (common practice, no source); the " +
		"maker's sheet decides"
	// ThresholdShare is how far volts at which a relay or charger starts and stops may be off.
	ThresholdShare = 0.015
)

// sensing lists the relays that close by the voltage of their feed, with the volts at which
// they do: they have no coil that could be read.
func (m *maker) sensing() []*Section {
	g := &Group{}
	for _, p := range m.c.Parts {
		r, ok := p.Source.(*design.Relay)
		if !ok || p.Coil() == nil || !p.Coil().Senses() {
			continue
		}
		g.Checks = append(g.Checks, threshold(p, "closes, rising", r.Form.PullInV), threshold(p, "opens after its delay, falling", r.Form.DropOutV))
	}
	if len(g.Checks) == 0 {
		return nil
	}
	return []*Section{{Kind: Sensing, Title: "Before power: sensing relays", Groups: []*Group{g},
		Setup: []string{"The studs at 30 and 87 undone. A supply with a limit of 1 A between 30 and 85, the meter on volts from 87 to 85: nothing " +
			"there while the relay is open, the supply's volts once it has closed. Begin a volt below the first figure and raise it by a tenth at a " +
			"time until it closes, then lower it and wait at each step: it may take a minute to open."}}}
}

func threshold(p *circuit.Part, does string, atV float64) *Check {
	return &Check{Ref: p.Ref, Name: p.Name, Where: does + ", 30 to 85", Quantity: quantity.Voltage,
		Nominal: atV, Low: atV * (1 - ThresholdShare),
		High: atV * (1 + ThresholdShare), Basis: basisSensing}
}
