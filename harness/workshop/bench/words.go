package bench

import (
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/caution"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// cautions come before everything else.
func cautions(d *design.Design) []string {
	list := []string{
		d.Cautioned("Isolate the battery before the tests without power: negative off first, on last. Cover the loose end."),
		"No open flame, spark or smoking near a battery that charges or has just been charged: it gives off hydrogen. " +
			"Ventilate the place; wear eye protection.",
		"Take off rings, watch and chains. Never bridge the posts. Use insulated tools.",
	}
	list = append(list, moving(d.Afloat())...)
	list = append(list, "Stop at smoke, smell, heat or a reading far off: power off first, then look for the cause.")
	if d.NamesPetrol() {
		list = append(list, caution.Petrol)
	}
	if d.NominalV() >= 48 {
		list = append(list, "This system reaches "+quantity.Format(d.HighestV(), quantity.Voltage)+" in normal use: treat it as able to injure, "+
			"and its arcs do not go out by themselves: pull no plug and no fuse that carries current (common practice, no source).")
	}
	return list
}

// still is how the vehicle stands where a gear may be engaged.
func still(d *design.Design) string {
	if d.Afloat() {
		return "Made fast"
	}
	return "Wheels chocked"
}

// secured is how the vehicle stands while its engine runs.
func secured(d *design.Design) string {
	if d.Afloat() {
		return "made fast and out of gear"
	}
	return "the vehicle held from rolling and out of gear"
}

// moving are the cautions about the engine and about what the harness may get in the
// way of: a boat has other controls.
func moving(afloat bool) []string {
	if afloat {
		return []string{
			"With the engine running: exhaust outdoors and cooling water supplied, hands, leads and clothes clear of belts, " +
				"shaft and propeller, out of gear.",
			"Hot parts: exhaust, engine, lamps and heaters burn. Let them cool, and keep meter leads off them.",
			"Helm and controls: before casting off, work the helm, throttle and gear lever from stop to stop with the harness " +
				"in place. Nothing may pull or catch.",
			"Do not work on helm, engine-stop or other safety circuits without the training that they require.",
		}
	}
	return []string{
		"With the engine running: outdoors or with the exhaust ducted away, hands, leads and clothes clear of belts, " +
			"fan, chain and wheels, the vehicle held from rolling and out of gear.",
		"Hot parts: exhaust, engine, lamps and heaters burn. Let them cool, and keep meter leads off them.",
		"Braking and steering: before moving off, turn the steering from stop to stop and work every lever with " +
			"the harness in place. Nothing may pull, catch or be near a brake line.",
		"Do not work on brake, steering, airbag or other safety circuits without the training that they require.",
	}
}

func (m *maker) tools() []string {
	list := []string{
		"Meter with volts, ohms, 10 A and milliamperes, both inputs fused: know the fuse of the second, often 0.4 A; clamp for DC amperes.",
		"Supply with an adjustable current limit, or a 21 W filament lamp of the system voltage in a holder with leads.",
		"This sheet, the schematic and the connection table.",
		"For small resistances: the supply at 1 A through the wire and the meter on millivolts at its ends. " +
			"Then a millivolt is a milliohm.",
	}
	if m.d.HasBanks() {
		list = append(list, "Every battery charged and then rested for some hours, nothing on and no charger: the volts of further ones are for four "+
			"fifths full to full. One that was charged within the hour reads higher.")
	}
	return list
}

// hints of each kind of section.
var hints = map[Kind][]Hint{
	Continuity: {
		{"No reading", "wire cut inside its insulation, terminal not crimped or not seated, wrong cavity"},
		{"Some ohms, changing when the wire is moved", "crimp on the insulation, broken strands, terminal not latched"},
		{"Two or three times the figure", "size smaller than designed, longer than designed, or one bad crimp"},
		{"Less than half of the figure", "a second path is connected: unplug what is in parallel"},
	},
	Isolation: {
		{"Near 0 Ω", "insulation pinched or pierced, terminal against the frame, feed and return swapped"},
		{"Some ohms to some kilohms", "a load, lamp or coil is still connected between the two"},
		{"Falling slowly, or below 1 MΩ when wet", "water or dirt in a connector"},
	},
	Fuses: {
		{"Another colour or figure", "wrong fuse: a larger one no longer protects the wire, a smaller one opens in use"},
		{"Blown before first use", "an earlier attempt met a fault: find it before fitting a new one"},
	},
	Coils: {
		{"No reading", "coil open, or measured between the wrong terminals"},
		{"Near 0 Ω", "coil shorted, suppression diode shorted"},
		{"Half or double", "relay of another coil voltage"},
	},
	Strings: {
		{"One lower than the rest", "it is older or weaker, or something drew from it alone: charge it by itself and read again; if it stays lower, replace all of them together"},
		{"All lower", "not charged, or not rested long enough"},
	},
	Polarity: {
		{"Return side open", "ground point not bare or not tight, return wire in the wrong place"},
		{"Low on both sides", "feed and return joined somewhere, or the fuse is still in"},
		{"Feed side joined to the ground", "feed and return swapped at the load"},
	},
	FirstPower: {
		{"At the limit at once, volts near zero", "short behind this fuse: power off, unplug by halves until it goes"},
		{"More than the bound", "a load is on that should be off, or a relay pulls in without the key"},
		{"Nothing at all with the key on", "no return, relay coil not fed, or the tap is dead"},
		{"Lamp in place of the fuse glows full", "the same as a supply at its limit"},
	},
	InUse: {
		{"Load far lower than expected, amperes low", "one bad joint: follow the drops from the post outward to the largest step"},
		{"Load far lower, amperes high", "load larger than designed, or a stalled motor"},
		{"Higher than expected, amperes low", "load not drawing: bulb, internal fuse, own switch"},
		{"Volts at a load that is off", "wrong way of the block, switch bridged, back-feed through another load"},
		{"All loads lower by the same", "the fault is in what they share: main feed, main fuse, ground point"},
		{"A drop near battery voltage", "this is the break"},
	},
	Live: {
		{"Posts fall at idle and rise at fast idle", "charging does not cover what is drawn at idle: see the budget"},
		{"Posts do not rise at all", "charging system, its fuse or its lead; not the harness"},
		{"Posts above the bound", "regulator: stop the engine, before lamps and control units suffer"},
	},
	Charging: {
		{"No amperes", "fuse at the battery charged is out, the charger waits for its delay or its volts, or the battery is full"},
		{"Fewer than allowed", "the battery is fuller than it should be, or the charger is set to less"},
	},
	Parked: {
		{"Tens of milliamperes more, for some minutes", "a control unit has not gone to sleep yet: wait and read again"},
		{"More, and it stays", "a circuit is live with the key off: pull fuses one by one until it falls"},
		{"Less than expected", "a part that should be live is not: clock, alarm, memory supply"},
	},
}

// within names a terminal as one reads it off the part, without the reference: "keyed, 87".
func within(t *circuit.Terminal) string {
	switch t.Part.Kind {
	case circuit.Splice, circuit.Ground:
		return t.Part.Name
	case circuit.Battery:
		return "battery " + sign(t.Name)
	case circuit.Bank:
		return t.Part.Name + " " + sign(t.Name)
	}
	return t.Part.Name + ", " + sign(t.Name)
}

// sign shows a minus as a minus and not as a hyphen.
func sign(name string) string {
	if strings.HasSuffix(name, "-") {
		return strings.TrimSuffix(name, "-") + "−"
	}
	return name
}

// short names a terminal by reference alone: "K1 87".
func short(t *circuit.Terminal) string {
	if t.Part.Kind == circuit.Splice || t.Part.Kind == circuit.Ground {
		return t.Part.Ref
	}
	return t.Part.Ref + " " + contact(t)
}

// contact is a terminal at its part; of a connector in the loom, in which half.
func contact(t *circuit.Terminal) string {
	if t.Part.Kind == circuit.Connector {
		return t.Mark + " " + t.Name
	}
	return sign(t.Name)
}
