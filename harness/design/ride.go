package design

import (
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"

	"gopkg.in/yaml.v3"
)

// Ride is a sequence of legs.
type Ride struct {
	Name        string
	StartCharge Quantity          // of the first battery, a share, default 1
	Charge      map[*Bank]float64 // of further ones; full where not said
	Legs        []*Leg
	Pos         problem.Pos
	charge      []chargeDraft
}

// Leg is a time at an engine speed with loads on.
type Leg struct {
	Lasts     Quantity   // seconds
	As        *Situation // the situation it is like; nil = none
	EngineRPM float64
	Key       KeyState
	On        []*Load
	With      []When // the conditions that hold
	AmbientC  Quantity
	Pos       problem.Pos
}

var rideSection = section[Ride]{
	Section: Section{Name: "ride", Shape: KindNamed,
		Doc: "A sequence of legs, to follow the charge of each battery through a day. Links and chargers close, open, start and stop " +
			"under way by the voltages that they go by; how full a leg's `situation` says that batteries are does not count.",
		Example: "rides:\n  commute:\n    start charge: 90 %\n    legs:\n" +
			"      - {lasts: 12 min, engine: idle, on: [grips]}\n" +
			"      - {lasts: 40 min, engine: cruise, on: all, ambient: 5 °C}\n"},
	keys: []key[Ride]{
		quantityKey(Key{Name: "start charge", Unit: quantity.Share, Min: 0, Max: 1, Default: "100 %",
			Doc: "state of charge of the first battery at the start", Example: "90 %"},
			func(x *Ride) *Quantity { return &x.StartCharge }),
		chargeKey("how full further batteries are at the start", func(x *Ride) *[]chargeDraft { return &x.charge }),
		legsKey(),
	},
	finish: func(_ *reader, x *Ride, _ field) {
		if !x.StartCharge.Given() {
			x.StartCharge.Value = 1
		}
	},
}

// legsKey reads the legs, of which there is at least one: nothing follows from none.
func legsKey() key[Ride] {
	k := listKey(Key{Name: "legs", Required: true, Doc: "its legs, in order", Example: "see leg"}, &legSection, addLeg)
	read := k.read
	k.read = func(r *reader, x *Ride, f field) {
		if n := follow(f.node); n.Kind == yaml.SequenceNode && len(n.Content) == 0 {
			r.report(r.pos(n), f.where.String()+" has no legs", "one leg or more, such as {lasts: 12 min, engine: idle}")
		}
		read(r, x, f)
	}
	return k
}

var legSection = section[stateDraft]{
	Section: Section{Name: "leg", Shape: KindList,
		Doc:     "A time at one engine speed with some loads on.",
		Example: "legs:\n  - {lasts: 12 min, engine: 2600 rpm, on: [grips]}\n"},
	keys: append([]key[stateDraft]{
		quantityKey(Key{Name: "lasts", Was: "minutes", Unit: quantity.Duration, Min: 1, Max: 30 * 86400, Required: true,
			Doc: "how long it lasts"}, func(x *stateDraft) *Quantity { return &x.leg.Lasts }),
		quantityKey(Key{Name: "ambient", Unit: quantity.Temperature, Min: minAmbientC, Max: maxAmbientC,
			Doc: "air temperature, which the battery follows in hours, by its mass", Default: "with the engine running that of the battery's place, its highest; at rest 25 °C, or that of the place where it is lower", Example: "5 °C"},
			func(x *stateDraft) *Quantity { return &x.leg.AmbientC }),
		{Key: Key{Name: "situation", Kind: KindState, Example: "traffic", Default: "none",
			Doc: "the situation that it is like: what the leg does not say itself, and which of the vehicle's own loads draw"},
			read: func(r *reader, x *stateDraft, f field) {
				if s, ok := r.sentence(f, maxName); ok {
					x.as = s
				}
			}},
	}, stateKeys()...),
}

func addRide(r *reader, d *Design, name string, n *yaml.Node) *Ride {
	x := &Ride{Name: name, Pos: r.pos(n)}
	d.Rides = append(d.Rides, x)
	return x
}

func addLeg(r *reader, ride *Ride, n *yaml.Node) *stateDraft {
	leg := &Leg{Pos: r.pos(n)}
	ride.Legs = append(ride.Legs, leg)
	return r.addState(&stateDraft{of: where{"leg of ride", ride.Name}, leg: leg}, n)
}
