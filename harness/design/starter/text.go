package starter

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// writer puts a design together.
type writer struct {
	v     *vehicle
	a     Answers
	lib   *library.Library
	taken map[string]bool
	list  []*accessory
	ways  int
	// control is the way that feeds the switches that work relays; 0 = none.
	control   int
	lights    string // the navigation lights' switch; "" = none
	lightsWay int
	shown     []showing // by its positions
	lacking   []string  // lights that the rules want besides
	rings     int       // returns at the first stud of the accessories
	bar       bool      // before the negative post, which would bear more lugs than it takes
	plusBar   bool      // at the positive post, likewise
	// barBehindMain: the plus bar hangs on the main fuse, and so has none of its own.
	barBehindMain bool
	engine        engine
	tap, tapA     string
	second        bank
	solar         string // rated power of the panels; "" = none
	runs          []run
	b             strings.Builder
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(&w.b, format+"\n", args...) }

// section writes a heading and its entries, or nothing without entries.
func (w *writer) section(name, comment string, entries []string) {
	if len(entries) == 0 {
		return
	}
	w.line("")
	if comment != "" {
		w.line("# %s", strings.ReplaceAll(comment, "\n", "\n# "))
	}
	w.line("%s:", name)
	for _, e := range entries {
		w.line("  %s", e)
	}
}

// text is the whole design.
func (w *writer) text() string {
	w.heading()
	w.section("vehicle loads", "What the vehicle draws besides: usual figures, from memory. Measure, or read the workshop manual.", w.own())
	w.section("places", "Where parts are, with the hottest air they meet in use. `moves` is for what turns or is\nhinged.", w.places())
	w.section("runs", "The loom between the places: lay a string and measure. `cover: auto` takes a sleeve that the\nrun needs.", w.laid())
	w.line("")
	w.line("# What holds for every wire. No size is given: `fusewright size` says which and why.")
	w.line("wire: %s", w.v.wire)
	if w.v.tap != "" && w.ways > 0 {
		w.section("taps", "A factory wire that is live with the key on works the relay. Check that no\nmodule supervises it, and what it can spare.",
			[]string{w.tap + ": {at: " + w.v.block + ", hot: key, fuse: " + w.tapA + ", spare: " + cmp.Or(w.v.spare, "500 mA") + ", supervised: no}"})
	}
	w.section("grounds", "Where returns meet.", w.grounds())
	w.section("fuses", "Ratings are left open. The first fuse is within the practice's distance of the battery, in a holder;\none that bolts on the post itself would have no wire before it.", w.fuses())
	w.section("relays", "Where no form is given, it is left open.", w.relays())
	w.section("chargers", "", w.chargers())
	w.section("blocks", "Type and fuses are left open.", w.blocks())
	w.section("splices", "Joints: of what one switch works together, and of a pump that works by itself and by hand.", w.splices())
	w.section("switches", w.lightsNote(), w.switches())
	w.section("loads", "The accessories, of the library. Give `power` or `current` where yours differs, `critical: yes`\nto hold one to the tighter limit of voltage drop. `drop aim` is what its wires may lose: less than the\nlimit, so that joints, age and tolerances have room. `plug: auto` is a connector to be chosen, at which it\ncomes off the harness. `own switch: yes` draws only where a situation says so, as a socket does with\nsomething plugged in.", w.loads())
	w.section("situations", "What is on at once. Add those that matter to you.", w.situations())
	return w.b.String()
}

func (w *writer) heading() {
	fmt.Fprintf(&w.b, `# A first design, to be made your own: every figure that you did not give is an example. Wiring can burn:
# local codes, the makers' instructions and licensed practice come first.
fusewright: 1
title: "%s"
vehicle: %s
revision: A
system: %g V
practice: %s

# The resistance is what is usual for chemistry and capacity: take the maker's data sheet, or a battery tester.
battery: {chemistry: %s, capacity: %s, resistance: %s, at: %s}
`, w.a.Title, cmp.Or(w.engine.words, w.v.words), w.v.systemV(), w.v.practice, w.a.Battery, w.a.Capacity,
		w.resistance(w.a.Battery, w.a.Capacity), w.firstPlace())
	if w.startsOnLithium() {
		w.line("# %s", lithiumStarts)
	}
	w.section("batteries", "Loads are fed from it; it is charged over its link while the engine runs.", w.batteries())
	fmt.Fprintf(&w.b, `
charging:
  regulated: %s
  output: {%s}
  idle: %s
  cruise: %s
  # How much less the charging gives when hot: measure it after half an hour's running.
  hot derating: 10 %%
`, w.a.Regulated, w.a.Output, w.a.Idle, w.a.Cruise)
	if w.engine.starter != "" {
		w.line("  starter: %s   # what a start takes", w.engine.starter)
	}
}

// lithiumStarts is what it means that a lithium battery starts the engine.
const lithiumStarts = "A board in series with the cells must bear the starter: take one made to start engines and give its `board`, or a lead one."

// startsOnLithium tells that a lithium battery of a size that is sold for accessories starts the engine.
func (w *writer) startsOnLithium() bool {
	ah, err := quantity.Parse(w.a.Capacity, quantity.Charge)
	return w.engine.starter != "" && err == nil && w.lithium(w.a.Battery) && ah >= w.lib.Chemistry(w.a.Battery).HouseAh
}

// own is what the vehicle draws, its engine first.
func (w *writer) own() []string {
	if w.engine.own == "" {
		return w.v.own
	}
	return append([]string{w.engine.own}, w.v.own...)
}

// resistance is the library's for chemistry and capacity.
func (w *writer) resistance(chemistry, capacity string) string {
	capacityAh, err := quantity.Parse(capacity, quantity.Charge)
	if err != nil || capacityAh <= 0 { // reading the design says what is wrong
		capacityAh = 1
	}
	return quantity.Format(w.lib.Chemistry(chemistry).Ohm(capacityAh)*w.v.scale(), quantity.Resistance)
}

// grounds are those of the vehicle to which something returns.
func (w *writer) grounds() []string {
	users := strings.Join(slices.Concat(w.relays(), w.loads()), "\n")
	list := slices.DeleteFunc(slices.Clone(w.v.grounds), func(entry string) bool {
		name, _, _ := strings.Cut(entry, ":")
		return !strings.Contains(users, "returns to: "+name)
	})
	for i, entry := range list {
		if bare, home := strings.CutSuffix(entry, "returns to: battery negative}"); home && w.trunk() != "" {
			entry = bare + "returns to: battery negative, wire: {size: " + w.trunk() + "}}"
		}
		list[i] = strings.ReplaceAll(entry, "battery negative", w.negative())
	}
	if w.bar {
		size := w.trunk()
		if slices.ContainsFunc(w.list, func(x *accessory) bool { return x.isolated() && !x.contactor }) { // a large fuse returns by it
			size = ""
		}
		list = append(list, fmt.Sprintf("%s: {kind: ground block, at: %s, limit: 250 A, returns to: %s negative, wire: {%slength: 250 mm}}",
			barPart, w.v.source, w.post(), sized(size)))
	}
	return list
}

// trunkA is the current of all behind the panel above which sizing finds its feed (our choice).
const trunkA = 25

// trunk is the size of the panel's feed and return; "" = left open.
func (w *writer) trunk() string {
	if w.ways == 0 || w.sumA() > trunkA {
		return ""
	}
	return w.v.trunk
}

// sumA is the current of all behind the main fuse.
func (w *writer) sumA() (amps float64) {
	for _, x := range w.list {
		if !x.isolated() {
			amps += x.amps
		}
	}
	return amps
}
