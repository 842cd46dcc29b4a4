package bench

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

const (
	basisCharger = "chargers: the library's volts, 1.5 % either way, and own draw, twice it at most (common practice, no source); the maker's " +
		"sheet decides"
	ownTimes = 2.0 // a charger's own draw against its data
)

// chargers lists what is to be seen at each charger by its input alone: nothing may reach a
// battery before its first fuse has had its first power.
func (m *maker) chargers() []*Section {
	g := &Group{}
	var setup []string
	done := map[string]bool{}
	say := func(from, text string) {
		if !done[from] {
			done[from] = true
			setup = append(setup, text)
		}
	}
	for _, p := range m.c.Parts {
		x, ok := p.Source.(*design.Charger)
		if !ok || x.Type == nil || x.FromEngine() { // an alternator runs with the engine alone
			continue
		}
		if x.Converts() {
			say("converter", "A converter: its output lead off, its end covered.")
		} else {
			say("charger", "The output lead off the battery it charges, its end covered. One that wants a battery at its output before it starts is put on it "+
				"through its own fuse, after first power.")
		}
		switch x.Type.From {
		case "battery":
			say("battery", "One that a battery feeds: its input lead off, the supply with a limit of 2 A between its + and −. Raise the volts slowly until it starts, by its lamp "+
				"or by volts at its output, then lower them until it stops.")
			g.Checks = append(g.Checks, chargerVolts(p, "starts, rising, + to −", x.Type.StartsV),
				chargerVolts(p, "takes no more, falling, + to −", x.Type.StopsV), chargerVolts(p, "held while it runs, out to −", x.HeldV()))
		case "panel":
			say("panel", "A solar controller: the panel covered or its lead apart. Battery on before panel, panel off before battery.")
			g.Checks = append(g.Checks, ownDraw(p, x, "panel covered, meter in series with its output"))
		default:
			say("mains", "A shore charger by its own plug alone: nothing on its mains side is worked on here. Mains plugged in last and out first.")
			g.Checks = append(g.Checks, ownDraw(p, x, "mains off, meter in series with its output"))
		}
	}
	if len(g.Checks) == 0 {
		return nil
	}
	return []*Section{{Kind: Chargers, Title: "Before power: chargers by their input alone", Groups: []*Group{g}, Setup: setup}}
}

func chargerVolts(p *circuit.Part, where string, atV float64) *Check {
	return &Check{Ref: p.Ref, Name: p.Name, Where: where, Quantity: quantity.Voltage, Nominal: atV,
		Low: atV * (1 - ThresholdShare), High: atV * (1 + ThresholdShare), Basis: basisCharger}
}

func ownDraw(p *circuit.Part, x *design.Charger, where string) *Check {
	return &Check{Ref: p.Ref, Name: p.Name, Where: where, Quantity: quantity.Current, Nominal: x.Type.OwnA, Low: nan(),
		High: ownTimes*x.Type.OwnA + StandbyFixedA, Basis: basisCharger}
}
