package design

import (
	"fmt"
	"slices"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"

	"gopkg.in/yaml.v3"
)

// When says in which key states something draws or is live, or names a condition in
// which alone it does: see Condition.
type When string

// The key states of taps and vehicle loads.
const (
	WhenRunning When = "running" // engine running
	WhenKey     When = "key"     // key on, engine running or not
	WhenAlways  When = "always"
)

// VehicleLoad is what the machine itself draws.
type VehicleLoad struct {
	Name     string
	PowerW   Quantity // at the system's regulated voltage
	CurrentA Quantity
	Duty     Quantity // share of time, 0..1
	When     When     // default running; "" where it draws in situations
	// In are the situations in which alone it draws, While the conditions; none of
	// either = by When.
	In    []*Situation
	While []When
	Pos   problem.Pos

	in []Text // the names of In and While
}

var vehiclePower = Key{Kind: KindQuantity, Unit: quantity.Power, Min: 0, Max: 100_000}

var vehicleLoadSection = section[VehicleLoad]{
	Section: Section{Name: "vehicle load", Shape: KindNamed,
		Doc: "Something that the machine itself draws: ignition, injection, factory lamps. It is at the " +
			"battery posts, since the factory wiring is not part of the design.",
		Short: "its power",
		Example: "vehicle loads:\n  ignition and injection: 62 W\n" +
			"  cooling fan: {power: 60 W, duty: 30 %}\n  clock: {current: 2 mA, when: always}\n"},
	keys: []key[VehicleLoad]{
		quantityKey(Key{Name: "power", Unit: quantity.Power, Min: 0, Max: 100_000,
			Doc: "power at the regulated voltage; either this or `current`"},
			func(l *VehicleLoad) *Quantity { return &l.PowerW }),
		quantityKey(Key{Name: "current", Unit: quantity.Current, Min: 0, Max: 2000,
			Doc: "current at the regulated voltage"},
			func(l *VehicleLoad) *Quantity { return &l.CurrentA }),
		quantityKey(Key{Name: "duty", Unit: quantity.Share, Min: 0, Max: 1, Default: "100 %",
			Doc: "share of the time it draws"}, func(l *VehicleLoad) *Quantity { return &l.Duty }),
		{Key: Key{Name: "when", Kind: KindStates, Choices: whenWords, Default: string(WhenRunning), Example: "[traffic, climb]",
			Doc: "draws with the engine running, with the key on, always, or only in the situations named, or with the conditions that " +
				"taps name as `hot`: a fan that runs in traffic, brake lamps"}, read: func(r *reader, l *VehicleLoad, f field) { r.when(l, f) }},
	},
	short: func(r *reader, l *VehicleLoad, f field) bool {
		if isNothing(f.node) {
			return false
		}
		l.PowerW, _ = r.quantity(f, &vehiclePower)
		l.When, l.Duty.Value = WhenRunning, 1
		return true
	},
	finish: func(r *reader, l *VehicleLoad, f field) {
		if l.When == "" && l.in == nil {
			l.When = WhenRunning
		}
		if !l.Duty.Given() {
			l.Duty.Value = 1
		}
		r.exactlyOne(f, "power", "current")
	},
}

// VehicleV is the voltage in volts that the machine's own loads are stated at: the
// regulated one.
func (d *Design) VehicleV() float64 { return d.Charging.RegulatedV.Or(d.NominalV()) }

// VehicleW is what one of the machine's own loads takes while it draws, in watts
// at VehicleV.
func (d *Design) VehicleW(l *VehicleLoad) float64 {
	if l.PowerW.Given() {
		return l.PowerW.Value
	}
	return l.CurrentA.Value * d.VehicleV()
}

// when reads a word of the key, or names of situations to be looked up later.
func (r *reader) when(l *VehicleLoad, f field) {
	list := r.texts(f, maxName)
	if n := follow(f.node); n.Kind == yaml.ScalarNode && len(list) == 1 {
		for _, word := range whenWords {
			if fold(list[0].Value) == word {
				l.When = When(word)
				return
			}
		}
	}
	l.in = list
}

// words are what may stand for a situation.
func (r *reader) words() []string {
	words := slices.Clone(whenWords)
	for _, w := range r.d.Conditions {
		words = append(words, string(w))
	}
	return words
}

// finishVehicleLoads looks up the situations and conditions that vehicle loads name.
func (r *reader) finishVehicleLoads() {
	for _, l := range r.d.VehicleLoads {
		for _, t := range l.in {
			if w, ok := r.conditions[fold(t.Value)]; ok && !slices.Contains(l.While, w) {
				l.While = append(l.While, w)
				continue
			}
			switch s := r.situation(t, where{"vehicle load", l.Name}, r.words()...); {
			case s == nil:
			case slices.Contains(l.In, s):
				r.report(t.Pos, fmt.Sprintf("vehicle load %s: %s is named twice", quoted(l.Name), quoted(t.Value)), "each name once")
			default:
				l.In = append(l.In, s)
			}
		}
	}
}

var whenWords = []string{string(WhenRunning), string(WhenKey), string(WhenAlways)}

func addVehicleLoad(r *reader, d *Design, name string, n *yaml.Node) *VehicleLoad {
	l := &VehicleLoad{Name: name, Pos: r.pos(n)}
	d.VehicleLoads = append(d.VehicleLoads, l)
	return l
}

// exactlyOne reports when none or several of some keys are given.
func (r *reader) exactlyOne(f field, keys ...string) {
	given := 0
	for _, k := range keys {
		if f.has[k] {
			given++
		}
	}
	switch {
	case given == 0:
		r.report(r.pos(f.node), f.where.String()+": how much it draws is not given", oneOf(keys))
	case given > 1:
		r.report(r.pos(f.node), f.where.String()+": how much it draws is given more than once",
			"only one of "+oneOf(keys))
	}
}
