package survey

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
)

// The three readings of the load step, from which a battery's resistance follows.
var loadStep = [3]string{"volts at rest", "volts with load", "amperes of load"}

func battery(d *design.Design) *Group {
	load := "head lamps, or a heater"
	if d.Afloat() {
		load = "lamps, pumps and fridge together"
	}
	return inString(&d.Battery, storage("Battery", load, "battery"))
}

// bank is a further battery, measured by itself.
func bank(b *design.Bank) *Group {
	g := storage("Battery "+b.Name, "lamps, pumps and fridge together", "batteries", b.Name)
	g.Setup = append([]string{"Open the link to the other battery first, and switch off what charges this one."}, g.Setup...)
	return inString(&b.Store, g)
}

// inString is the group of batteries in series, of which one is measured; a meter across all of them would read so many times as much.
func inString(b *design.Battery, g *Group) *Group {
	if b.InSeries > 0 {
		g.Setup = append(g.Setup, fmt.Sprintf("It is %d in series: every reading is at the posts of one. Read the others at rest the same way; they are within 100 mV of each other, "+
			"of one kind, capacity and age, or all of them are replaced.", b.InSeries))
	}
	return g
}

// storage is the group of a battery by its path in the design, with what serves as a load.
func storage(title, load string, path ...string) *Group {
	at := func(names ...string) []string { return append(slices.Clone(path), names...) }
	step := func(i int, unit quantity.Dimension, how string) *Blank {
		return &Blank{Path: at("load step", loadStep[i]), Unit: unit, How: how, Key: joined(at("resistance")) + ": volts lost over amperes"}
	}
	return &Group{Title: title,
		Setup: []string{"Note its age and the month on its label. Charge it, let it rest for two hours, engine stopped and everything off."},
		Cautions: []string{"Eye protection; no flame or spark near it: it gives off hydrogen. Take off rings and chains, never bridge the posts.",
			"The load gets hot and may be on for ten seconds only."},
		Blanks: []*Blank{
			blank(quantity.Charge, "printed on the case or in its data sheet", at("capacity")...),
			blank(quantity.Duration, "hour rate of that capacity, beside it: 10 h or 20 h", at("rate")...),
			step(0, quantity.Voltage, "meter on the posts themselves, not on the clamps"),
			step(1, quantity.Voltage, "the same ten seconds after a load of about a fifth of the capacity in amperes is on: "+load),
			step(2, quantity.Current, "clamp round the negative lead while that load is on, less what flowed before")}}
}

// chargers are what charges beside the engine, and converters: the panel's power, and the voltage that each holds.
func chargers(d *design.Design) *Group {
	g := &Group{}
	var charges, converts, panel, mains bool
	for _, x := range d.Chargers {
		if x.FromEngine() { // see alternators
			continue
		}
		how := "meter on the posts of what it charges, once that no longer rises"
		if x.Converts() {
			how, converts = "meter on its output, with one of the loads that it feeds on", true
		} else {
			charges = true
			panel, mains = panel || x.Type != nil && x.Type.From == "panel", mains || x.Type != nil && x.Type.From == "mains"
		}
		if x.PanelW.Given() {
			g.Blanks = append(g.Blanks, blank(quantity.Power, "rated power on the backs of its panels, together", "chargers", x.Name, "panel"))
		}
		g.Blanks = append(g.Blanks, blank(quantity.Voltage, how, "chargers", x.Name, "output"))
	}
	switch {
	case charges && converts:
		g.Title = "Other chargers, and converters"
	case charges:
		g.Title = "Other chargers"
	default:
		g.Title = "Converters"
	}
	if charges {
		g.Setup = append(g.Setup, "What it charges full, nothing else charging: engine stopped, but for a charger that a battery feeds.")
	}
	if converts {
		g.Setup = append(g.Setup, "A converter charges nothing: what feeds it switched on, engine stopped.")
	}
	if panel {
		g.Cautions = append(g.Cautions, "A panel in the light is live: cover it before its leads are touched. Never take the battery off a controller while the panel is on it.")
	}
	if mains {
		g.Cautions = append(g.Cautions, "The mains side of a shore charger kills: leave it to licensed hands.")
	}
	return g
}
