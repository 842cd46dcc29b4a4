// Package survey says what to measure on a machine before a harness for it is designed: what,
// how, and where in the design it goes. It reads a filled-in form back into the design's text.
package survey

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/edit"
	"fusewright/harness/design/quantity"
)

// Group is what is measured together.
type Group struct {
	Title    string
	Setup    []string // what to do first
	Cautions []string
	Blanks   []*Blank
}

// Blank is one thing to measure.
type Blank struct {
	Path []string // in the form
	How  string
	Key  string             // of the design: "battery, resistance"
	Unit quantity.Dimension // "" = one of Words
	// Words are what may stand there instead of a quantity.
	Words []string
	// put makes the changes of what is filled in; nil = counted with others, see loadStep.
	put func(text string, value float64) []edit.Change
}

// Of are the groups for a design: its places, runs, taps and the vehicle's own loads are what
// is asked for.
func Of(d *design.Design) []*Group {
	all := []*Group{battery(d)}
	for _, b := range d.Batteries {
		all = append(all, bank(b))
	}
	all = append(all, charging(d), alternators(d), chargers(d), draw(d), taps(d), returns(d), places(d), lengths(d))
	return slices.DeleteFunc(all, func(g *Group) bool { return len(g.Blanks) == 0 })
}

// craft is what the harness is for, in a word.
func craft(d *design.Design) string {
	if d.Afloat() {
		return "boat"
	}
	return "vehicle"
}

// to puts a value under a key as it is written.
func to(key string, path ...string) func(string, float64) []edit.Change {
	return func(text string, _ float64) []edit.Change { return []edit.Change{{Path: path, Key: key, Value: text}} }
}

func blank(unit quantity.Dimension, how string, path ...string) *Blank {
	last := len(path) - 1
	return &Blank{Path: path, How: how, Unit: unit, put: to(path[last], path[:last]...), Key: joined(path)}
}

func joined(path []string) string { return strings.Join(path, ", ") }

func charging(d *design.Design) *Group {
	if !d.Charging.Present() {
		return &Group{}
	}
	where, most := "round all leads at the positive post together, arrow towards the battery", "what the clamp shows and the loads take together"
	if d.Charging.Feeds {
		where, most = "round the lead at the machine's own stud, before whatever parts it to the batteries", "what the clamp shows"
	}
	g := &Group{Title: "Charging",
		Setup: []string{"Engine warm, battery full, clamp for DC " + where + "; everything of the " + craft(d) + " off that can be. " +
			"Then load the battery until the volts sag by half a volt: " + most + " is the most that it gives at that speed. " + rowOfItsOwn},
		Cautions: running(d),
		Blanks: []*Blank{blank(quantity.Voltage, "meter on the posts at cruising speed, battery full", "charging", "regulated"),
			blank(quantity.Speed, "tachometer, engine warm", "charging", "idle"),
			blank(quantity.Speed, "in normal use", "charging", "cruise")}}
	g.output(&d.Charging, "output", "charging")
	return g
}

const bySpeed = "output by speed" // of a further alternator

const rowOfItsOwn = "A speed that has no row, such as the idle measured, gets one of its own."

// running are the cautions of a running engine.
func running(d *design.Design) []string {
	held := "held"
	if d.Afloat() {
		held = "made fast, the engine space aired first"
	}
	return []string{"Engine running: exhaust outdoors, out of gear and " + held + ", hands, leads and clothes clear of belts, chain and fan. Hot parts burn.",
		"Never disconnect the battery while the engine runs."}
}

// output asks what a machine gives at each speed of its curve, which stands under a key of what a path names.
func (g *Group) output(of *design.Charging, key string, path ...string) {
	under := func(more ...string) []string { return slices.Concat(path, more) }
	for _, p := range of.Output {
		g.Blanks = append(g.Blanks, blank(quantity.Current, "the most it gives at "+p.RPM.Text, under(key, p.RPM.Text)...))
	}
	g.Blanks = append(g.Blanks, blank(quantity.Share, "after half an hour's running at that speed, how much less that is", under("hot derating")...))
}

// alternators are the further machines that the engine drives: what each gives at which speed.
func alternators(d *design.Design) *Group {
	g := &Group{Title: "Other alternators", Cautions: running(d),
		Setup: []string{"Engine warm and running, its own speed where there are several, what the machine charges full; clamp for DC round the lead at its own stud, before any isolator. " +
			"Then load what it charges until the volts sag by half a volt: what the clamp shows is the most that it gives at that speed. " + rowOfItsOwn}}
	for _, x := range d.Chargers {
		if x.FromEngine() {
			g.Blanks = append(g.Blanks, blank(quantity.Voltage, "meter on its own stud and case at cruising speed, what it charges full", "chargers", x.Name, "output"))
			g.output(&x.Engine, bySpeed, "chargers", x.Name)
		}
	}
	if len(g.Blanks) == 0 {
		return &Group{}
	}
	return g
}

func draw(d *design.Design) *Group {
	g := &Group{Title: "What the " + craft(d) + " draws by itself",
		Setup: []string{"Clamp round the battery's negative lead, set to zero first. Engine stopped, key on; switch one thing on after the other and write down by how much the reading rises. " +
			"What runs with the engine only: from the workshop manual, or the engine's fuse pulled at idle and the change read."},
		Cautions: []string{"While a meter is in series in the milliampere range, do not turn the key and switch nothing on: its fuse opens, or worse, does not."}}
	always := false
	for _, l := range d.VehicleLoads {
		key, unit := "power", d.VehicleV()
		if l.CurrentA.Given() {
			key, unit = "current", 0
		}
		b := blank(quantity.Current, "by how much the reading rises with it on", "vehicle loads", l.Name)
		b.Key += ", " + key
		if unit > 0 {
			b.Key += ": amperes times regulated volts"
		}
		b.put = func(text string, amps float64) []edit.Change {
			if unit > 0 {
				text = quantity.Plain(math.Round(amps*unit*10)/10, quantity.Power)
			}
			return []edit.Change{{Path: []string{"vehicle loads", l.Name}, Key: key, Value: text}}
		}
		g.Blanks = append(g.Blanks, b)
		always = always || l.When == design.WhenAlways
	}
	if !always {
		const name = "at rest"
		b := blank(quantity.Current, "key off, everything closed, after ten minutes: meter in series in the negative lead", "vehicle loads", name)
		b.Key += ", current"
		b.put = func(text string, _ float64) []edit.Change {
			path := []string{"vehicle loads", name}
			return []edit.Change{{Path: path, Key: "current", Value: text}, {Path: path, Key: "when", Value: string(design.WhenAlways)}}
		}
		g.Blanks = append(g.Blanks, b)
	}
	return g
}

func taps(d *design.Design) *Group {
	never := "brakes, steering, airbags or engine control"
	if d.Afloat() {
		never = "helm, throttle or engine control"
	}
	g := &Group{Title: "Factory circuits in use",
		Setup: []string{"Find the fuse of each by pulling it. What it can spare: four fifths of its fuse less what the clamp shows with all of its own on. " +
			"Supervised: a lamp of 5 W added to it for ten minutes brings up a warning, or the wiring diagram shows a control unit in place of a switch."},
		Cautions: []string{"Use no circuit of " + never + "."}}
	for _, t := range d.Taps {
		g.Blanks = append(g.Blanks, blank(quantity.Current, "printed on the fuse before it", "taps", t.Name, "fuse"),
			blank(quantity.Current, "by clamp, see above", "taps", t.Name, "spare"))
		s := blank("", "yes or no, see above", "taps", t.Name, "supervised")
		s.Words = []string{"yes", "no"}
		g.Blanks = append(g.Blanks, s)
	}
	return g
}

func returns(d *design.Design) *Group {
	g := &Group{Title: "Returns through the frame",
		Setup: []string{"10 A of load between the positive post and the stud; meter on millivolts from the stud to the negative post: a millivolt is a tenth of a milliohm."}}
	for _, x := range d.Grounds {
		if x.Kind == design.FrameStud {
			g.Blanks = append(g.Blanks, blank(quantity.Resistance, "millivolts over ten", "grounds", x.Name, "frame resistance"))
		}
	}
	return g
}

func places(d *design.Design) *Group {
	g := &Group{Title: "How hot it gets", Setup: []string{"A thermometer with its sensor in the air at the place, in shade, at the end of a hard hour on the hottest day; or add to today's reading what the hottest day is warmer."},
		Cautions: []string{"Keep sensor and lead clear of what turns and of the exhaust."}}
	for _, p := range d.Places {
		g.Blanks = append(g.Blanks, blank(quantity.Temperature, "highest air temperature", "places", p.Name, "ambient"))
	}
	return g
}

func lengths(d *design.Design) *Group {
	corners := "round every corner"
	if slices.ContainsFunc(d.Places, func(p *design.Place) bool { return p.Moves }) {
		corners += ", long enough for what turns or is hinged from stop to stop"
	}
	g := &Group{Title: "Lengths along a string", Setup: []string{"Lay a string the way the loom will go, " + corners + ". Measure the string."}}
	for i, r := range d.Runs {
		b := blank(quantity.Length, "from "+r.From.Name+" to "+r.To.Name, "runs", r.Name, "length")
		b.put = to("length", "runs", strconv.Itoa(i))
		g.Blanks = append(g.Blanks, b)
	}
	return g
}
