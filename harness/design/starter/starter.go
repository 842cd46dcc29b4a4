// Package starter writes a first design for a kind of vehicle: commented text
// with a main fuse, a relay or switch that turns everything off, a fuse block,
// and a circuit for each accessory, all sizes and ratings left open for sizing.
// Every figure in it is an example that the builder has to replace; the text
// says so. It draws no conclusion of its own: the text is read and judged like
// any other design.
package starter

import (
	"fmt"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/library"
)

// Answers are what a builder says of the vehicle. What is empty is taken from
// the kind of vehicle.
type Answers struct {
	Vehicle     string // one of Vehicles
	Title       string
	Battery     string   // chemistry, of the library
	Capacity    string   // "14 Ah"
	Regulated   string   // "14.2 V"
	Output      string   // "1300 rpm: 14 A, 4000 rpm: 30 A"
	Idle        string   // "1300 rpm"
	Cruise      string   // "4000 rpm"
	Engine      string   // one of the kind's, where it has several
	Second      string   // capacity of a second battery, with its chemistry where it differs: "LiFePO4 100 Ah"; "none"
	Solar       string   // rated power of solar panels that charge the second battery: "120 W"; "none"
	Tap         string   // factory wire that is live with the key on, and its fuse: "tail lamp feed, 10 A"
	Accessories []string // of the library, with a name of one's own or without: "left lamp: LED auxiliary lamp"
	// Of the accessories, by their names; nil = as usual.
	Together []string // those that share a switch: "left lamp + right lamp"
	Live     []string // those that stay live with the key or the house switch off
	Fitted   []string // those that are there already
	Lengths  []string // of the loom: "battery box - console: 2 m"; a stretch that is not named has its usual one
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
	a := Answers{Vehicle: v.name, Title: "Accessories", Battery: v.battery, Capacity: v.capacity, Second: none, Solar: none,
		Regulated: v.regulated, Output: v.output, Idle: v.idle, Cruise: v.cruise, Accessories: v.accessories}
	if v.tap != "" {
		a.Tap = v.tap + ", 10 A"
	}
	if len(v.engines) > 0 {
		a.Engine = v.engines[0].name
	}
	return a, true
}

// none is the answer that there is no such thing.
const none = "none"

// maxWays is how many ways the largest fuse block of the library has.
const maxWays = 12

// Write makes the design. The error says which answer is wrong.
func Write(a Answers, lib *library.Library) ([]byte, error) {
	w, err := planned(a, lib)
	if err != nil {
		return nil, err
	}
	src := []byte(w.text())
	if _, err := design.Read("new design", src, lib); err != nil {
		return nil, err
	}
	return src, nil
}

// planned is a writer that knows how everything is fed; what is not answered is as usual.
func planned(a Answers, lib *library.Library) (*writer, error) {
	v := find(a.Vehicle)
	if v == nil {
		return nil, noVehicle(a.Vehicle)
	}
	usual, _ := Defaults(v.name)
	fill(&a, usual)
	if err := a.tidy(lib); err != nil {
		return nil, err
	}
	w := &writer{v: v, a: a, lib: lib, taken: map[string]bool{barPart: true, plusBarPart: true, barFusePart: true, "battery": true, "battery negative": true, solarPart: true, solarPart + " end": true, housePost: true, housePost + " negative": true}}
	for _, step := range []func() error{w.chooseEngine, w.chooseSecond, w.chooseSolar, w.chooseTap, w.plan, w.layRuns, w.countLugs} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	return w, nil
}

func noVehicle(name string) error {
	return fmt.Errorf("there is no kind of vehicle %q (expected %s)", name, strings.Join(Vehicles(), ", "))
}

// fill takes from the usual answers what is not said. A list that is not nil
// but empty is said: no accessories.
func fill(a *Answers, usual Answers) {
	for _, f := range []struct{ to, from *string }{{&a.Title, &usual.Title}, {&a.Battery, &usual.Battery},
		{&a.Capacity, &usual.Capacity}, {&a.Regulated, &usual.Regulated}, {&a.Output, &usual.Output},
		{&a.Idle, &usual.Idle}, {&a.Cruise, &usual.Cruise}, {&a.Engine, &usual.Engine}, {&a.Second, &usual.Second}, {&a.Solar, &usual.Solar},
		{&a.Tap, &usual.Tap}} {
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
	chemistry := lib.Chemistry(strings.TrimSpace(a.Battery))
	if chemistry == nil {
		return noChemistry("battery", a.Battery, lib)
	}
	a.Battery = chemistry.Name
	if strings.ContainsAny(a.Title, "\"\\\n\r") {
		return fmt.Errorf("title: no quotes, backslashes or line breaks")
	}
	output, err := tidyOutput(a.Output)
	a.Output = output
	return err
}

func noChemistry(what, name string, lib *library.Library) error {
	var names []string
	for _, c := range lib.Batteries {
		names = append(names, c.Name)
	}
	return fmt.Errorf("%s: the library has no chemistry %q, but %s", what, name, wording.And(names))
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
