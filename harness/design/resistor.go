package design

import "fusewright/harness/design/quantity"

// DroppingResistor stands in a feed, or in a return, and takes part of the voltage: a dropping resistor.
type DroppingResistor struct {
	Common
	Ohm     Quantity
	RatingW Quantity // heat that it bears; not given = not known
	// Cutout: a thermal fuse of its own opens before it sets fire to anything.
	Cutout  bool
	FedBy   []Feed
	Returns []Feed // where it stands in a return
}

var resistorSection = section[DroppingResistor]{
	Section: Section{Name: "resistor", Shape: KindNamed,
		Doc: "A dropping resistor in a feed, or in a return where it `returns to`, which makes a motor slower or a heater milder. What is fed by it " +
			"and by another part too is fed past it as long as that one gives: low speed through the resistor, high speed directly. A switch or the coil's switch of a relay past it, which the load does without, counts as closed only in a situation that names it under `closed` or has all on; both speeds are checked. A motor behind it is taken as a fan or pump, which draws less as it turns slower; one that runs either way, is `on for` a time or starts an engine draws its rated current. Of loads in series each says `in series with`.",
		Example: "resistors:\n  dropper: {resistance: 0.6 Ω, rating: 60 W, thermal fuse: yes, at: console, fed by: speed low}\n" +
			"switches:\n  speed: {type: rocker 16 A, at: console, fed by: rear 2, positions: [off, low, high]}\n" +
			"loads:\n  blower: {power: 90 W, behaves: motor, at: console, fed by: [speed high, dropper], returns to: frame stud}\n"},
	keys: withCommon(append([]key[DroppingResistor]{
		quantityKey(Key{Name: "resistance", Unit: quantity.Resistance, Min: 0.001, Max: 1e4, Required: true,
			Doc: "its resistance", Example: "0.6 Ω"}, func(x *DroppingResistor) *Quantity { return &x.Ohm }),
		quantityKey(Key{Name: "rating", Unit: quantity.Power, Min: 0.1, Max: 1e4,
			Doc: "heat that it bears for good as it is mounted; not given is said in the findings", Example: "60 W"},
			func(x *DroppingResistor) *Quantity { return &x.RatingW }),
		yesKey(Key{Name: "thermal fuse", Default: "no", Doc: "has a thermal fuse of its own, which opens when a motor behind it is held fast", Example: "yes"},
			func(x *DroppingResistor) *bool { return &x.Cutout }),
	}, eitherKeys(func(x *DroppingResistor) *[]Feed { return &x.FedBy }, func(x *DroppingResistor) *[]Feed { return &x.Returns })...)...),
	finish: func(r *reader, _ *DroppingResistor, f field) { r.oneSide(f) },
}
