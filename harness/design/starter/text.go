package starter

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"
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
	control int
	rings   int // returns at the first stud of the accessories
	b       strings.Builder
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
	w.section("vehicle loads", "What the factory wiring draws. Example figures: measure, or read the workshop manual.", w.v.own)
	places, runs := w.placesAndRuns()
	w.section("places", "Where parts are, with the hottest air they meet in use. `moves` is for what turns or is\nhinged.", places)
	w.section("runs", "The loom between the places. Example lengths: lay a string and measure. `cover: auto` takes\na sleeve that the run needs.", w.listed(runs))
	w.line("")
	w.line("# What holds for every wire. No size is given: `fusewright size` says which and why.")
	w.line("wire: %s", w.v.wire)
	if w.v.tap != "" && w.ways > 0 {
		w.section("taps", "A factory wire that is live with the key on works the relay. Check that no\nmodule supervises it, and what it can spare.",
			[]string{w.v.tap + ": {at: " + w.v.block + ", hot: key, fuse: 10 A, spare: " + cmp.Or(w.v.spare, "500 mA") + ", supervised: no}"})
	}
	w.section("grounds", "Where returns meet.", w.grounds())
	w.section("fuses", "Ratings are left open. The first fuse is within the practice's distance of the battery.", w.fuses())
	w.section("relays", "The form is left open.", w.relays())
	w.section("blocks", "Type and fuses are left open.", w.blocks())
	w.section("splices", "A pump that works by itself and by hand: one fuse, then a joint for both switches.", w.splices())
	w.section("switches", "", w.switches())
	w.section("loads", "The accessories, of the library. Give `power` or `current` where yours differs, `critical: yes`\nto hold one to the tighter limit of voltage drop. `plug: auto` is a connector to be chosen, at which\nit comes off the harness. `own switch: yes` draws only where a situation says so, as a socket does\nwith something plugged in.", w.loads())
	w.section("situations", "What is on at once. Add those that matter to you.", w.situations())
	return w.b.String()
}

func (w *writer) heading() {
	fmt.Fprintf(&w.b, `# A first design, to be made your own: every figure is an example. Wiring can burn: local codes,
# the makers' instructions and licensed practice come first.
fusewright: 1
title: "%s"
vehicle: %s
revision: A
system: %g V
practice: %s

# The resistance is what is usual for chemistry and capacity: take the maker's data sheet, or a battery tester.
battery: {chemistry: %s, capacity: %s, resistance: %s, at: %s}

charging:
  regulated: %s
  output: {%s}
  idle: %s
  cruise: %s
  # How much less the charging gives when hot: measure it after half an hour's running.
  hot derating: 10 %%
`, w.a.Title, w.v.words, w.v.systemV(), w.v.practice, w.a.Battery, w.a.Capacity, w.resistance(), w.v.source, w.a.Regulated, w.a.Output,
		w.a.Idle, w.a.Cruise)
}

// resistance is the library's for chemistry and capacity.
func (w *writer) resistance() string {
	capacityAh, err := quantity.Parse(w.a.Capacity, quantity.Charge)
	if err != nil || capacityAh <= 0 { // reading the design says what is wrong
		capacityAh = 1
	}
	return quantity.Format(w.lib.Chemistry(w.a.Battery).Ohm(capacityAh)*w.v.scale(), quantity.Resistance)
}

func (w *writer) listed(list []string) []string {
	out := make([]string, len(list))
	for i, e := range list {
		out[i] = "- " + e
	}
	return out
}

// grounds are those of the vehicle to which something returns.
func (w *writer) grounds() []string {
	users := strings.Join(append(w.relays(), w.loads()...), "\n")
	list := slices.DeleteFunc(slices.Clone(w.v.grounds), func(entry string) bool {
		name, _, _ := strings.Cut(entry, ":")
		return !strings.Contains(users, "returns to: "+name)
	})
	for i, entry := range list {
		if bare, home := strings.CutSuffix(entry, "returns to: battery negative}"); home && w.trunk() != "" {
			list[i] = bare + "returns to: battery negative, wire: {size: " + w.trunk() + "}}"
		}
	}
	return list
}

// trunkA is the current of all behind the panel above which sizing finds its feed (our choice).
const trunkA = 25

// trunk is the size of the panel's feed and return; "" = left open.
func (w *writer) trunk() string {
	sumA := 0.0
	for _, x := range w.list {
		sumA += x.amps
	}
	if w.ways == 0 || sumA > trunkA {
		return ""
	}
	return w.v.trunk
}

// blockPart and others are the names of the parts that every design has.
const (
	mainPart  = "main"
	pilotPart = "pilot"
	relayPart = "keyed"
	housePart = "house switch"
	blockPart = "panel"
)

// staysOn is why what keeps watch is live with the key off.
const staysOn = `, stays live: "it keeps watch while nobody is there"`

func (w *writer) fuses() []string {
	var list []string
	if w.ways > 0 {
		kind := ""
		if w.v.first != "" {
			kind = "type: " + w.v.first + ", "
		}
		list = append(list, mainPart+": {"+kind+"at: "+w.v.source+", fed by: battery, wire: {length: 150 mm}}")
		if w.v.tap != "" {
			list = append(list, pilotPart+": {at: "+w.v.block+", fed by: "+w.v.tap+", wire: {length: 150 mm}}")
		}
	}
	for _, x := range w.list {
		from, size := "battery", ""
		if w.v.tail != "" && w.ways > 0 && x.direct() {
			from, size = mainPart, sized(w.v.tail) // as thick as the wire upstream
		}
		switch entry := x.name + " fuse: {at: " + w.v.source + ", fed by: " + from + ", wire: {" + size + "length: 150 mm}"; {
		case x.watches():
			list = append(list, entry+staysOn+"}")
		case x.way == 0:
			list = append(list, entry+"}")
		}
	}
	return list
}

func (w *writer) relays() []string {
	var list []string
	stud := w.v.ground["block"]
	if w.v.tap != "" && w.ways > 0 {
		form := ""
		if w.v.first != "" { // such a fuse lets more through than a small relay bears
			form = "form: power make, "
		}
		list = append(list, fmt.Sprintf("%s: {%sat: %s, fed by: %s, coil: {fed by: %s, returns to: %s, suppressed by: resistor}}",
			relayPart, form, w.v.block, mainPart, pilotPart, stud))
	}
	for _, x := range w.list {
		if x.contactor {
			list = append(list, fmt.Sprintf("%s contactor: {at: %s, fed by: %s isolator, wire: {length: 300 mm}, "+
				"coil: {fed by: %s switch, returns to: %s, suppressed by: resistor}, stays live: \"its isolator is opened on leaving\"}", x.name, w.v.source, x.name, x.name, stud))
		}
		if !x.relay {
			continue
		}
		at, from, coil, back, live := w.v.block, fmt.Sprintf("%s %d", blockPart, x.way), x.name+" switch", stud, ""
		switch {
		case x.float != "":
			at, from, coil, back, live = w.v.source, x.name+" joint", x.bothSwitches(), "battery negative", x.staysLive()
		case x.direct():
			at, from = w.v.source, x.name+" fuse"
		}
		list = append(list, fmt.Sprintf("%s relay: {at: %s, fed by: %s, wire: {length: 250 mm}, "+
			"coil: {fed by: %s, returns to: %s, suppressed by: resistor}%s}", x.name, at, from, coil, back, live))
	}
	return list
}

func (w *writer) blocks() []string {
	if w.ways == 0 {
		return nil
	}
	from := relayPart
	if w.v.tap == "" {
		from = housePart
	}
	list := []string{blockPart + ":", "  at: " + w.v.block, "  fed by: " + from}
	switch {
	case w.v.tap != "":
		list = append(list, "  wire: {length: 250 mm}")
	case w.trunk() != "":
		list = append(list, "  wire: {size: "+w.trunk()+"}   # stout: more will hang on it")
	}
	list = append(list, "  ways:")
	for _, x := range w.list {
		if x.way > 0 {
			list = append(list, fmt.Sprintf("    %d: auto   # %s", x.way, x.name))
		}
	}
	if w.control > 0 {
		list = append(list, fmt.Sprintf("    %d: auto   # switches that work relays", w.control))
	}
	return list
}

func (w *writer) switches() []string {
	var list []string
	if w.v.tap == "" && w.ways > 0 {
		list = append(list, housePart+": {type: battery switch 100 A, at: "+w.v.source+", fed by: "+mainPart+
			", wire: {"+sized(w.trunk())+"length: 300 mm}, stays live: \"the house switch is what turns the "+w.v.name+" off\"}")
	}
	for _, x := range w.list {
		switch {
		case x.switched == "":
		case x.float != "":
			list = append(list,
				fmt.Sprintf("%s float: {type: %s, at: %s, fed by: %s joint%s, ignition protected: yes}   # buy one marked so", x.name, x.float, w.placeOf(x), x.name, x.staysLive()),
				fmt.Sprintf("%s switch: {type: %s, at: %s, fed by: %s joint%s}", x.name, x.switched, w.v.zones["dash"], x.name, x.staysLive()))
		case x.isolated():
			list = append(list, fmt.Sprintf("%s isolator: {type: %s, at: %s, fed by: %s fuse, wire: {length: 250 mm}, "+
				"stays live: \"the isolator is opened on leaving\"}", x.name, x.switched, w.v.source, x.name))
			if x.contactor {
				list = append(list, fmt.Sprintf("%s switch: {type: %s, momentary: yes, at: %s, fed by: %s %d%s}", x.name, w.v.rocker,
					w.v.zones["dash"], blockPart, w.control, w.within(w.v.zones["dash"], w.v.block)))
			}
		default:
			held := ""
			if x.kind.Sign == string(design.SignHorn) {
				held = ", momentary: yes"
			}
			list = append(list, fmt.Sprintf("%s switch: {type: %s%s, at: %s, fed by: %s %d%s}", x.name, x.switched, held,
				w.v.zones["dash"], blockPart, w.switchWay(x), w.within(w.v.zones["dash"], w.v.block)))
		}
	}
	return list
}

// splices are the joints from which a float switch and a switch by hand are fed.
func (w *writer) splices() []string {
	var list []string
	for _, x := range w.list {
		if x.float != "" {
			list = append(list, fmt.Sprintf("%s joint: {at: %s, fed by: %s fuse, wire: {length: 200 mm}}", x.name, w.v.source, x.name))
		}
	}
	return list
}

// switchWay is the way that feeds an accessory's switch: its own, or, where the
// switch works a relay, the small fuse that all such switches share.
func (w *writer) switchWay(x *accessory) int {
	if x.relay {
		return w.control
	}
	return x.way
}

// within gives a wire between two parts in one place a length: the runs give none.
func (w *writer) within(a, b string) string {
	if a == b {
		return ", wire: {length: 400 mm}"
	}
	return ""
}

func (w *writer) loads() []string {
	var list []string
	for _, x := range w.list {
		from := fmt.Sprintf("%s %d", blockPart, x.way)
		start := w.v.block
		switch {
		case x.float != "" && !x.relay:
			from, start = x.bothSwitches(), "" // from two places: the runs give both lengths
		case x.contactor:
			from, start = x.name+" contactor", w.v.source
		case x.isolated():
			from, start = x.name+" isolator", w.v.source
		case x.watches():
			from, start = x.name+" fuse", w.v.source
		case x.direct():
			from, start = x.name+" relay", w.v.source
		case x.relay:
			from = x.name + " relay"
		case x.switched != "":
			from, start = x.name+" switch", w.v.zones["dash"]
		}
		at := w.placeOf(x)
		feed, back := w.within(at, start), w.ground(x)
		if w.stout(x) {
			feed, back = fmt.Sprintf(", wire: {size: %s}", w.v.stout), fmt.Sprintf("%s, return wire: {size: %s}", back, w.v.stout)
		}
		entry := fmt.Sprintf("%s: {type: %s%s%s, at: %s, fed by: %s%s, returns to: %s", x.name, x.kind.Name, w.figures(x), x.plug(),
			at, from, feed, back)
		switch {
		case x.watches():
			entry += staysOn
		case x.contactor:
		case x.float != "":
			entry += x.staysLive()
		case x.isolated():
			entry += `, stays live: "the isolator is opened on leaving"`
		}
		if w.critical(x.kind) {
			entry += ", critical: yes"
		}
		if x.hasKnob() && !x.watches() {
			entry += ", own switch: yes"
		}
		list = append(list, entry+"}")
	}
	return list
}

// stoutA is the current from which an accessory behind panel and plug gets stout wires; above
// handA sizing asks for more (our choice).
const stoutA = 2

// stout tells that the contacts on the way of an accessory leave its wires little to lose. Of a
// motor held to the tighter limit sizing finds what is enough.
func (w *writer) stout(x *accessory) bool {
	critical := x.kind.Behaves == string(design.Motor) && w.critical(x.kind)
	return w.trunk() != "" && !critical && x.way > 0 && x.amps >= stoutA && x.amps <= handA && w.placeOf(x) != w.v.block
}

// sized is a size among the keys of a wire; "" = left open.
func sized(size string) string {
	if size == "" {
		return ""
	}
	return "size: " + size + ", "
}

// figures are those of an accessory made for another system voltage than the
// library's: the same power at that voltage.
func (w *writer) figures(x *accessory) string {
	k := w.v.scale()
	if k == 1 {
		return ""
	}
	text := fmt.Sprintf(", rated at: %g V", x.kind.RatedV*k)
	if x.kind.CurrentA > 0 {
		text = fmt.Sprintf(", current: %g A%s", x.kind.CurrentA/k, text)
	}
	if x.kind.MinV > 0 {
		text += fmt.Sprintf(", minimum voltage: %g V", x.kind.MinV*k)
	}
	return text
}

// placeOf is where an accessory stands.
func (w *writer) placeOf(x *accessory) string {
	if x.heavy() {
		return w.v.heavy
	}
	return w.v.zones[x.zone]
}

// placesAndRuns are those of the vehicle, with those of strong motors where there
// are any.
func (w *writer) placesAndRuns() (places, runs []string) {
	places, runs = w.v.places, w.v.runs
	if slices.ContainsFunc(w.list, (*accessory).heavy) {
		places = append(slices.Clone(places), w.v.heavy+": {ambient: 40 °C, wet: yes}")
		runs = append(slices.Clone(runs), fmt.Sprintf("{from: %s, to: %s, length: %s, chafes: yes, cover: auto}   # strong motors alone: wires that share a loom heat each other",
			w.v.source, w.v.heavy, w.v.heavyRun))
	}
	return places, runs
}

// plug lets an accessory with leads of its own come off the harness; one with
// tabs or studs is wired to those.
func (x *accessory) plug() string {
	if !x.isolated() && x.float == "" && (x.kind.End == library.FlyingLeads || strings.HasPrefix(x.kind.End, "pin ")) {
		return ", plug: auto"
	}
	return ""
}

// fullStud is how many returns go to a frame stud before the next one is taken.
const fullStud = 5

// ground is where an accessory returns, with a length where it stands there. One
// with a feed of its own from the battery has a return of its own, too.
func (w *writer) ground(x *accessory) string {
	if x.isolated() || x.float != "" {
		return "battery negative"
	}
	g := w.v.ground[x.zone]
	if w.v.spill != "" && g != w.v.spill {
		if w.rings++; w.rings > fullStud {
			return w.v.spill
		}
	}
	for _, e := range w.v.grounds {
		if strings.HasPrefix(e, g+":") && strings.Contains(e, "at: "+w.v.zones[x.zone]+",") {
			return g + ", return wire: {length: 400 mm}"
		}
	}
	return g
}

func (w *writer) situations() []string {
	var all, few []string
	closed := ""
	if w.v.tap == "" && w.ways > 0 {
		closed = ", closed: [" + housePart + "]"
	}
	parked := "parked"
	if w.lib.Practice(w.v.practice).Afloat {
		parked = "moored"
	}
	list, anchored := []string{}, []string{}
	for _, x := range w.list {
		switch {
		case x.contactor:
			list = append(list, fmt.Sprintf("working the %s: {engine: cruise, on: [%s]%s}", x.name, x.name, closed))
			continue
		case x.isolated():
			list = append(list, fmt.Sprintf("working the %s: {engine: cruise, on: [%s]}", x.name, x.name))
			continue
		case x.kind.AnchorLamp && w.lib.Practice(w.v.practice).Afloat:
			anchored = append(anchored, x.name)
			continue
		}
		if x.float != "" {
			list = append(list, fmt.Sprintf("moored, %s by its float: {key: off, on: [%s], closed: [%s float]}", x.name, x.name, x.name))
		}
		all = append(all, x.name)
		if x.kind.Sign == "electronics" { // on as long as it has power
			few = append(few, x.name)
		}
	}
	on := func(names []string) string {
		if len(names) == 0 {
			return "none"
		}
		return "[" + strings.Join(names, ", ") + "]"
	}
	resting := fmt.Sprintf("waiting: {engine: idle, on: %s%s}", on(few), closed)
	if w.v.resting != "" {
		resting = fmt.Sprintf("%s, on: %s%s}", w.v.resting, on(all), closed)
	}
	if len(anchored) > 0 {
		list = append(list, fmt.Sprintf("at anchor: {key: off, on: %s%s}", on(anchored), closed))
	}
	return append([]string{
		fmt.Sprintf("under way, all on: {engine: cruise, on: %s%s}", on(all), closed),
		resting, parked + ": {key: off}"}, list...)
}
