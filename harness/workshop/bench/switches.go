package bench

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
)

const basisSwitches = "switches: the positions of the design"

// switches lists every position of the switches that have several, with what must be
// joined there and what must not.
func (m *maker) switches() []*Section {
	g := &Group{}
	for _, p := range m.c.Parts {
		x, ok := p.Source.(*design.Switch)
		if !ok || x.Positions == nil {
			continue
		}
		outputs := x.Outputs()
		for _, at := range x.Positions {
			open := slices.DeleteFunc(slices.Clone(outputs), func(out string) bool { return slices.Contains(at.Outputs, out) })
			text := "all open"
			if len(at.Outputs) > 0 {
				text = p.Terminals[0].Name + " joined to " + wording.And(at.Outputs)
				if len(open) > 0 {
					text += ", open to " + wording.And(open)
				}
				if x.Momentary {
					text += "; all open when let go"
				}
			}
			g.Checks = append(g.Checks, &Check{Ref: p.Ref, Name: p.Name, Where: at.Name, Nominal: nan(), Low: nan(), High: nan(),
				Text: text, Basis: basisSwitches})
		}
	}
	if len(g.Checks) == 0 {
		return nil
	}
	return []*Section{{Kind: Switches, Title: "Before power: switches of several positions", Groups: []*Group{g},
		Setup: []string{"Battery off. One probe at the switch's common terminal, in a return its out, else its in, the other at each of its outputs, in each position; go through them in both " +
			"directions, and hold the handle between two: nothing may be joined there that is in neither."}}}
}

const (
	basisTimed = "timed relays: the design's times, a quarter either way (common practice, no source)"
	// DelayShare is how far a relay's delay may be off.
	DelayShare = 0.25
)

// timedRelays lists the relays that latch, or close or open late.
func (m *maker) timedRelays() []*Section {
	g := &Group{}
	for _, p := range m.c.Parts {
		r, ok := p.Source.(*design.Relay)
		if !ok {
			continue
		}
		if r.Latches {
			g.Checks = append(g.Checks, &Check{Ref: p.Ref, Name: p.Name, Where: "pulses of half a second at the coil", Nominal: nan(), Low: nan(), High: nan(),
				Text: "turns over at each, and stays so between them and with the coil dead", Basis: basisTimed})
		}
		if r.OnDelayS.Given() {
			g.Checks = append(g.Checks, delay(p, "from supply at the coil to contact closed", r.OnDelayS.Value))
		}
		if r.OffDelayS.Given() {
			g.Checks = append(g.Checks, delay(p, "from supply taken off the coil to contact open", r.OffDelayS.Value))
		}
	}
	if len(g.Checks) == 0 {
		return nil
	}
	return []*Section{{Kind: Timed, Title: "Before power: relays that latch or wait", Groups: []*Group{g},
		Setup: []string{"Relay out of its socket: the supply with a limit of 1 A at its coil, and at its supply terminal where it has one; the " +
			"meter's continuity tone at its contact; a watch. A latching relay is left open."}}}
}

func delay(p *circuit.Part, where string, seconds float64) *Check {
	return &Check{Ref: p.Ref, Name: p.Name, Where: where, Quantity: quantity.Duration, Nominal: seconds,
		Low: seconds * (1 - DelayShare), High: seconds * (1 + DelayShare), Basis: basisTimed}
}
