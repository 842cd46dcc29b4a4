// Package starter writes a first design for a kind of vehicle: commented text
// with a main fuse, a relay or switch that turns everything off, a fuse block,
// and a circuit for each accessory, all sizes and ratings left open for sizing.
// Every figure in it is an example that the builder has to replace; the text
// says so. It draws no conclusion of its own: the text is read and judged like
// any other design.
package starter

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/library"
)

// Answers are what a builder says of the vehicle. What is empty is taken from
// the kind of vehicle.
type Answers struct {
	Vehicle     string // one of Vehicles
	Title       string
	Battery     string // chemistry, of the library
	Capacity    string // "14 Ah"
	Regulated   string // "14.2 V"
	Output      string // "1300 rpm: 14 A, 4000 rpm: 30 A"
	Idle        string // "1300 rpm"
	Cruise      string // "4000 rpm"
	Accessories []string
}

// Vehicles are the kinds of vehicles.
func Vehicles() []string {
	list := make([]string, len(vehicles))
	for i := range vehicles {
		list[i] = vehicles[i].name
	}
	return list
}

// Defaults are the answers for a kind of vehicle where the builder gives none;
// false when there is no such kind.
func Defaults(vehicle string) (Answers, bool) {
	v := find(vehicle)
	if v == nil {
		return Answers{}, false
	}
	return Answers{Vehicle: v.name, Title: "Accessories", Battery: v.battery, Capacity: v.capacity,
		Regulated: v.regulated, Output: v.output, Idle: v.idle, Cruise: v.cruise, Accessories: v.accessories}, true
}

// maxWays is how many ways the largest fuse block of the library has.
const maxWays = 12

// Write makes the design. The error says which answer is wrong.
func Write(a Answers, lib *library.Library) ([]byte, error) {
	v := find(a.Vehicle)
	if v == nil {
		return nil, fmt.Errorf("there is no kind of vehicle %q (expected %s)", a.Vehicle, strings.Join(Vehicles(), ", "))
	}
	usual, _ := Defaults(v.name)
	fill(&a, usual)
	if err := a.tidy(lib); err != nil {
		return nil, err
	}
	w := &writer{v: v, a: a, lib: lib, taken: map[string]bool{"battery": true, "battery negative": true}}
	if err := w.plan(); err != nil {
		return nil, err
	}
	src := []byte(w.text())
	if _, err := design.Read("new design", src, lib); err != nil {
		return nil, err
	}
	return src, nil
}

// fill takes from the usual answers what is not said. A list that is not nil
// but empty is said: no accessories.
func fill(a *Answers, usual Answers) {
	for _, f := range []struct{ to, from *string }{{&a.Title, &usual.Title}, {&a.Battery, &usual.Battery},
		{&a.Capacity, &usual.Capacity}, {&a.Regulated, &usual.Regulated}, {&a.Output, &usual.Output},
		{&a.Idle, &usual.Idle}, {&a.Cruise, &usual.Cruise}} {
		if strings.TrimSpace(*f.to) == "" {
			*f.to = *f.from
		}
	}
	if a.Accessories == nil {
		a.Accessories = usual.Accessories
	}
}

// tidy checks the figures and spells them in the usual way.
func (a *Answers) tidy(lib *library.Library) error {
	for _, f := range []struct {
		what string
		text *string
		dim  quantity.Dimension
	}{{"capacity", &a.Capacity, quantity.Charge}, {"regulated", &a.Regulated, quantity.Voltage},
		{"idle", &a.Idle, quantity.Speed}, {"cruise", &a.Cruise, quantity.Speed}} {
		tidied, err := quantity.Tidy(*f.text, f.dim)
		if err != nil {
			return fmt.Errorf("%s: %w", f.what, err)
		}
		*f.text = tidied
	}
	found := false
	for _, c := range lib.Batteries {
		if strings.EqualFold(c.Name, strings.TrimSpace(a.Battery)) {
			a.Battery, found = c.Name, true
		}
	}
	if !found {
		var names []string
		for _, c := range lib.Batteries {
			names = append(names, c.Name)
		}
		return fmt.Errorf("battery: the library has no chemistry %q, but %s", a.Battery, wording.And(names))
	}
	if strings.ContainsAny(a.Title, "\"\\\n\r") {
		return fmt.Errorf("title: no quotes, backslashes or line breaks")
	}
	output, err := tidyOutput(a.Output)
	a.Output = output
	return err
}

// tidyOutput reads points such as "1300 rpm: 14 A, 4000 rpm: 30 A".
func tidyOutput(text string) (string, error) {
	var points []string
	for _, p := range strings.Split(text, ",") {
		speed, amps, ok := strings.Cut(p, ":")
		if !ok {
			return "", fmt.Errorf("output: %q is no point (expected an engine speed and a current or power, such as 1300 rpm: 14 A)",
				strings.TrimSpace(p))
		}
		rpm, err := quantity.Tidy(speed, quantity.Speed)
		if err != nil {
			return "", fmt.Errorf("output: %w", err)
		}
		gives, err := quantity.Tidy(amps, quantity.Current)
		if watts, inWatts := quantity.Tidy(amps, quantity.Power); inWatts == nil {
			gives, err = watts, nil
		}
		if err != nil {
			return "", fmt.Errorf("output: %w", err)
		}
		points = append(points, rpm+": "+gives)
	}
	return strings.Join(points, ", "), nil
}

// accessory is one load with how it is fed.
type accessory struct {
	kind     *library.LoadType
	name     string
	zone     string // see vehicle.zones
	amps     float64
	way      int    // of the block; 0 = a feed of its own from the battery
	switched string // switch type; "" = none
	float    string // type of the float switch beside it, of a boat's bilge pump; "" = none
	relay    bool   // the switch works a relay
	// contactor: a strong motor that runs for a while at a time; a switch at hand works the
	// contactor behind its isolator.
	contactor bool
}

// direct tells that an accessory has a fuse and a relay of its own at the
// battery.
func (x *accessory) direct() bool { return x.way == 0 && x.relay && x.float == "" }

// watches tells that an accessory stays live: it has a fuse of its own before key and switch.
func (x *accessory) watches() bool { return x.kind.Watches }

// isolated tells that an accessory has a fuse and a battery switch of its own.
func (x *accessory) isolated() bool { return x.way == 0 && !x.relay && x.float == "" && !x.watches() }

// heavy tells that an accessory is a strong motor, which stands at a place and
// has a loom of its own.
func (x *accessory) heavy() bool {
	return x.way == 0 && x.float == "" && x.kind.Behaves == string(design.Motor)
}

// bothSwitches are the float switch and the one by hand, either of which starts it.
func (x *accessory) bothSwitches() string {
	return fmt.Sprintf("[%s float, %s switch]", x.name, x.name)
}

// staysLive is why a bilge pump is live with the key off.
func (x *accessory) staysLive() string {
	return `, stays live: "the float switch pumps the boat while nobody is on board"`
}

// directA is the current from which it gets a fuse and a relay of its
// own at the battery: two fuses and two contacts in line lose too much
// (common practice, no source).
const directA = 9

// strongA is the current from which an accessory gets a fuse and a switch of
// its own at the battery: more than a blade fuse bears for good, 0.8 of 30 A.
const strongA = 24

// lastingA is its current, or that of a start which lasts for seconds, as a relay's
// contact bears it.
func (x *accessory) lastingA() float64 {
	if x.kind.Inrush.TauS < 1 {
		return x.amps
	}
	return x.amps * x.kind.Inrush.PeakRatio
}

// plan looks up the accessories and says how each is fed.
func (w *writer) plan() error {
	for _, name := range w.a.Accessories {
		kind := w.lib.Load(strings.TrimSpace(name))
		if kind == nil {
			p := problem.Nearest(name, w.lib.Names("loads"))
			if p != "" {
				p = fmt.Sprintf(" (did you mean %q?)", p)
			}
			return fmt.Errorf("the library has no accessory %q%s", name, p)
		}
		if kind.RatedV > 1.5*w.v.systemV() {
			return fmt.Errorf("%s is for %g V; the vehicle has %g V", kind.Name, kind.RatedV, w.v.systemV())
		}
		x := &accessory{kind: kind, zone: zoneOf(kind), amps: kind.CurrentA}
		if kind.PowerW > 0 {
			x.amps = kind.PowerW / kind.RatedV
		}
		x.amps /= w.v.scale()
		x.name = w.unique(kind.Name)
		w.feed(x)
		w.list = append(w.list, x)
	}
	for _, x := range w.list {
		if (x.relay && x.float == "" || x.contactor) && w.control == 0 {
			w.ways++
			w.control = w.ways
		}
	}
	if w.ways > maxWays {
		return fmt.Errorf("the accessories need %d ways, more than the %d of a fuse block", w.ways, maxWays)
	}
	return nil
}

// unique makes a name that no other part has.
func (w *writer) unique(name string) string {
	for i := 1; ; i++ {
		try := name
		if i > 1 {
			try = fmt.Sprintf("%s %d", name, i)
		}
		if !w.taken[strings.ToLower(try)] {
			w.taken[strings.ToLower(try)] = true
			return try
		}
	}
}

// feed chooses way, switch and relay of an accessory.
func (w *writer) feed(x *accessory) {
	if x.kind.Bilge && w.lib.Practice(w.v.practice).Afloat && w.floated(x) {
		return
	}
	if x.watches() {
		return
	}
	if x.lastingA() > strongA {
		x.contactor = x.kind.Behaves == string(design.Motor) && x.kind.OnForS > 0
		x.switched = "battery switch 100 A"
		if !w.bears(w.lib.Switch(x.switched), x) {
			x.switched = "battery switch 300 A"
		}
		return
	}
	byHand := !x.hasKnob()
	if byHand && x.amps > directA {
		x.switched, x.relay = w.v.rocker, true
		return
	}
	w.ways++
	x.way = w.ways
	if !byHand {
		return
	}
	x.switched = w.v.rocker
	x.relay = !w.bears(w.lib.Switch(x.switched), x) || x.amps > handA
}

// hasKnob: what is plugged into a socket, and electronics, are switched at themselves.
func (x *accessory) hasKnob() bool { return x.kind.Sign == "electronics" || x.kind.Sign == "socket" }

// floated gives a bilge pump the float switch that bears it, before the house
// switch, and a switch by hand beside it; where none does, the largest, and both
// work a relay. False when the library has no float switch.
func (w *writer) floated(x *accessory) bool {
	var float *library.SwitchType
	for _, s := range w.lib.Switches {
		if s.Float && (float == nil || !w.bears(float, x) && s.ResistiveA > float.ResistiveA) {
			float = s
		}
	}
	if float == nil {
		return false
	}
	x.float, x.switched = float.Name, w.v.rocker
	x.relay = !w.bears(float, x) || !w.bears(w.lib.Switch(x.switched), x)
	return true
}

// bears tells that a switch stands an accessory's current with reserve.
func (w *writer) bears(s *library.SwitchType, x *accessory) bool {
	return s != nil && rating(s, x.kind.Behaves) >= reserve*x.amps
}

// handA is the current that is switched by hand at most; above it a relay saves
// the way to the dash and back (common practice, no source).
const handA = 7

// reserve is what a switch should bear over the rated current: the worst corner
// of a load's current (common practice, no source).
const reserve = 1.4

func rating(s *library.SwitchType, behaves string) float64 {
	return design.Behaviour(behaves).ContactA(s.ResistiveA, s.LampA, s.MotorA)
}

// zoneOf is where an accessory usually stands.
func zoneOf(k *library.LoadType) string {
	switch {
	case named(k, "tail", "position", "stop", "seat", "bilge", "fuel", "fridge", "water"):
		return "rear"
	case named(k, "grip", "glove", "jacket", "trouser"), k.Sign == "electronics", k.Sign == "socket":
		return "dash"
	}
	return "front"
}

// critical tells what may lose the least voltage on its way: afloat navigation
// lamps, bilge blowers and electronics (ABYC E-11, two sources), everywhere a
// fridge, whose compressor stops on low voltage (common practice, no source).
func (w *writer) critical(k *library.LoadType) bool {
	afloat := w.lib.Practice(w.v.practice).Afloat
	return named(k, "fridge") || afloat && (k.Sign == "electronics" || named(k, "navigation lamp", "anchor lamp", "blower"))
}

// named tells that one of the words is in an accessory's name.
func named(k *library.LoadType, words ...string) bool {
	name := strings.ToLower(k.Name)
	return slices.ContainsFunc(words, func(word string) bool { return strings.Contains(name, word) })
}
