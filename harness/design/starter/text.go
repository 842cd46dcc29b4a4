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
	control   int
	lights    string // the navigation lights' switch; "" = none
	lightsWay int
	allRound  bool // of the lights the last is shown under way and at anchor
	rings     int  // returns at the first stud of the accessories
	engine    engine
	tap, tapA string
	second    bank
	runs      []run
	b         strings.Builder
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
	w.section("fuses", "Ratings are left open. The first fuse is within the practice's distance of the battery.", w.fuses())
	w.section("relays", "Where no form is given, it is left open.", w.relays())
	w.section("chargers", "", w.chargers())
	w.section("blocks", "Type and fuses are left open.", w.blocks())
	w.section("splices", "Joints: of what one switch works together, and of a pump that works by itself and by hand.", w.splices())
	w.section("switches", "", w.switches())
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

// blockPart and others are the names of the parts that every design has.
const (
	mainPart  = "main"
	pilotPart = "pilot"
	relayPart = "keyed"
	housePart = "house switch"
	blockPart = "panel"
)

// brickA is the peak of a start from which a relay of the small form would be worked too hard.
const brickA = 40

func (w *writer) fuses() []string {
	list := w.linkFuses()
	if w.ways > 0 {
		kind := ""
		if w.v.first != "" {
			kind = "type: " + w.v.first + ", "
		}
		list = append(list, mainPart+": {"+kind+"at: "+w.v.source+", fed by: "+w.post()+", wire: {length: 150 mm}}")
		if w.v.tap != "" {
			list = append(list, pilotPart+": {at: "+w.v.block+", fed by: "+w.tap+", wire: {length: 150 mm}}")
		}
	}
	for _, x := range w.list {
		if x.way > 0 || x.leads != nil || x.position != "" {
			continue
		}
		from, size, kind := w.post(), "", ""
		if w.behindMain(x) {
			from, size = mainPart, sized(w.v.tail) // as thick as the wire upstream
		}
		if x.contactor {
			from = "battery"
		}
		if x.contactor && w.v.first != "" {
			kind = "type: " + w.v.first + ", "
		}
		entry := x.name + " fuse: {" + kind + "at: " + w.home(x) + ", fed by: " + from + ", wire: {" + size + "length: 150 mm}"
		if x.live {
			entry += x.staysLive()
		}
		list = append(list, entry+"}")
	}
	return list
}

// behindMain tells that an accessory's own fuse hangs on the main fuse.
func (w *writer) behindMain(x *accessory) bool {
	return w.v.tail != "" && w.ways > 0 && x.direct() && !x.live
}

// tailed are the keys of a wire that is as thick as those beside it at the main fuse; "" where
// there are none, or the main fuse is large.
func (w *writer) tailed(keys string) string {
	if !slices.ContainsFunc(w.list, w.behindMain) || w.sumA() > trunkA {
		return ""
	}
	return fmt.Sprintf(keys, w.v.tail)
}

func (w *writer) relays() []string {
	list := w.linkRelays()
	stud := w.v.ground[""]
	if w.v.tap != "" && w.ways > 0 {
		form := ""
		if w.v.first != "" { // such a fuse lets more through than a small relay bears
			form = "form: power make, "
		}
		list = append(list, fmt.Sprintf("%s: {%sat: %s, fed by: %s%s, coil: {fed by: %s, returns to: %s, suppressed by: resistor}}",
			relayPart, form, w.v.block, mainPart, w.tailed(", wire: {size: %s}"), pilotPart, stud))
	}
	for _, x := range w.list {
		if x.contactor {
			list = append(list, fmt.Sprintf("%s contactor: {at: %s, fed by: %s isolator, wire: {length: 300 mm}, "+
				"coil: {fed by: %s switch, returns to: %s, suppressed by: resistor}, stays live: \"its isolator is opened on leaving\"}", x.name, w.home(x), x.name, x.name, stud))
		}
		if !x.relay {
			continue
		}
		form := ""
		if x.kind.Behaves == string(design.Motor) && x.amps*x.kind.Inrush.PeakRatio > brickA {
			form = "form: mini make, "
		}
		at, from, coil, back := w.v.block, fmt.Sprintf("%s %d", blockPart, x.way), x.name+" switch", stud
		switch {
		case x.float != "":
			at, from, coil, back = w.v.source, x.name+" joint", x.bothSwitches(), w.negative()
		case x.live:
			at, from, back = w.v.source, x.name+" fuse", w.negative()
		case x.direct():
			at, from = w.v.source, x.name+" fuse"
		}
		list = append(list, fmt.Sprintf("%s relay: {%sat: %s, fed by: %s, wire: {length: 250 mm}, "+
			"coil: {fed by: %s, returns to: %s, suppressed by: resistor}%s}", x.name, form, at, from, coil, back, x.staysLive()))
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
		list = append(list, "  wire: {"+w.tailed("size: %s, ")+"length: 250 mm}")
	case w.trunk() != "":
		list = append(list, "  wire: {size: "+w.trunk()+"}   # stout: more will hang on it")
	}
	list = append(list, "  ways:")
	for n := 1; n <= w.ways; n++ {
		list = append(list, fmt.Sprintf("    %d: auto   # %s", n, w.onWay(n)))
	}
	return list
}

// onWay says what hangs on a way.
func (w *writer) onWay(n int) string {
	switch n {
	case w.control:
		return "switches that work relays"
	case w.lightsWay:
		return w.lights
	}
	var names []string
	for _, x := range w.list {
		if x.way == n {
			for _, y := range x.group {
				names = append(names, y.name)
			}
		}
	}
	return strings.Join(names, ", ")
}

func (w *writer) switches() []string {
	var list []string
	dash := w.v.zones["dash"]
	if w.v.tap == "" && w.ways > 0 {
		list = append(list, housePart+": {type: battery switch 100 A, at: "+w.v.source+", fed by: "+mainPart+
			", wire: {"+sized(w.trunk())+"length: 300 mm}, stays live: \"the house switch is what turns the "+w.v.name+" off\"}")
	}
	if w.lights != "" {
		under, anchor := lightsRunning, lightsAnchor
		if w.allRound {
			under, anchor = "["+lightsRunning+", "+lightsAllRound+"]", lightsAllRound
		}
		list = append(list, fmt.Sprintf("%s: {type: %s, at: %s, fed by: %s %d%s, positions: {off: none, under way: %s, at anchor: %s}}",
			w.lights, w.v.rocker, dash, blockPart, w.lightsWay, w.within(dash, w.v.block), under, anchor))
	}
	for _, x := range w.list {
		switch {
		case x.switched == "":
		case x.float != "":
			list = append(list,
				fmt.Sprintf("%s float: {type: %s, at: %s, fed by: %s joint%s, ignition protected: yes}   # buy one marked so", x.name, x.float, w.placeOf(x), x.name, x.staysLive()),
				fmt.Sprintf("%s switch: {type: %s, at: %s, fed by: %s joint%s}", x.name, x.switched, dash, x.name, x.staysLive()))
		case x.live:
			list = append(list, fmt.Sprintf("%s switch: {type: %s, at: %s, fed by: %s fuse%s%s}", x.name, x.switched, dash, x.name, w.within(dash, w.v.source), x.staysLive()))
		case x.isolated():
			list = append(list, fmt.Sprintf("%s isolator: {type: %s, at: %s, fed by: %s fuse, wire: {length: 250 mm}, "+
				"stays live: \"the isolator is opened on leaving\"}", x.name, x.switched, w.home(x), x.name))
			if x.contactor {
				list = append(list, fmt.Sprintf("%s switch: {type: %s, momentary: yes, at: %s, fed by: %s %d%s}", x.name, w.v.rocker,
					dash, blockPart, w.control, w.within(dash, w.v.block)))
			}
		default:
			held := ""
			if x.kind.Sign == string(design.SignHorn) {
				held = ", momentary: yes"
			}
			list = append(list, fmt.Sprintf("%s switch: {type: %s%s, at: %s, fed by: %s %d%s}", x.name, x.switched, held,
				dash, blockPart, w.switchWay(x), w.within(dash, w.v.block)))
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

// splices are the joints from which a float switch and a switch by hand are fed, and those of
// what a switch works together.
func (w *writer) splices() []string {
	var list []string
	for _, x := range w.list {
		if x.float != "" {
			list = append(list, fmt.Sprintf("%s joint: {at: %s, fed by: %s fuse, wire: {length: 200 mm}}", x.name, w.v.source, x.name))
		}
		if len(x.group) > 1 {
			from, start := w.feedOf(x)
			at := w.jointOf(x)
			list = append(list, fmt.Sprintf("%s joint: {at: %s, fed by: %s%s}", x.name, at, from, w.within(at, start)))
		}
	}
	for _, out := range []string{lightsRunning, lightsAnchor, lightsAllRound} {
		if len(w.on(out)) > 1 {
			list = append(list, fmt.Sprintf("%s lights joint: {at: %s, fed by: %s %s, wire: {length: 200 mm}}", out, w.v.zones["dash"], w.lights, out))
		}
	}
	return list
}

// on are the lamps on an output of the navigation lights' switch.
func (w *writer) on(output string) (list []*accessory) {
	for _, x := range w.list {
		if x.position == output {
			list = append(list, x)
		}
	}
	return list
}

// jointOf is where the joint of those that share a switch is: where they all are, else at what
// feeds it.
func (w *writer) jointOf(x *accessory) string {
	for _, y := range x.group {
		if w.placeOf(y) != w.placeOf(x) {
			_, start := w.feedOf(x)
			return start
		}
	}
	return w.placeOf(x)
}

// feedOf is what feeds an accessory, or the joint of those that share its switch, and where that
// is; no place where it is fed from two.
func (w *writer) feedOf(x *accessory) (from, start string) {
	dash := w.v.zones["dash"]
	switch {
	case x.position != "" && len(w.on(x.position)) > 1:
		return x.position + " lights joint", dash
	case x.position != "":
		return w.lights + " " + x.position, dash
	case x.float != "" && !x.relay:
		return x.bothSwitches(), "" // the runs give both lengths
	case x.contactor:
		return x.name + " contactor", w.home(x)
	case x.isolated():
		return x.name + " isolator", w.home(x)
	case x.relay && x.way > 0:
		return x.name + " relay", w.v.block
	case x.relay:
		return x.name + " relay", w.v.source
	case x.switched != "":
		return x.name + " switch", dash
	case x.live:
		return x.name + " fuse", w.v.source
	}
	return fmt.Sprintf("%s %d", blockPart, x.way), w.v.block
}

func (w *writer) loads() []string {
	w.rings = 0
	var list []string
	for _, x := range w.list {
		leader := cmp.Or(x.leads, x)
		from, start := w.feedOf(leader)
		if len(leader.group) > 1 {
			from, start = leader.name+" joint", w.jointOf(leader)
		}
		entry := fmt.Sprintf("%s: {type: %s%s%s, at: %s, fed by: %s%s, returns to: %s", x.name, x.kind.Name, w.figures(x), x.plug(),
			w.placeOf(x), from, w.within(w.placeOf(x), start), w.ground(x))
		switch {
		case x.live || x.float != "":
			entry += x.staysLive()
		case x.isolated() && !x.contactor:
			entry += `, stays live: "the isolator is opened on leaving"`
		}
		if w.critical(x.kind) {
			entry += ", critical: yes"
		}
		entry += w.aim(x)
		if x.hasKnob() && !x.kind.Watches && leader.switched == "" {
			entry += ", own switch: yes"
		}
		if x.fitted {
			entry += ", fitted: yes"
		}
		list = append(list, entry+"}")
	}
	return list
}

// aimOfLimit is the share of the limit of voltage drop that the wires of an accessory are given:
// joints, contacts and fuses lose about as much again, and the rest is for age and tolerances.
// aimDirect is that of one with a relay of its own at the battery, behind fewer of them; aimFromA is
// the current from which that tells; aimLinked is what the link of a second battery takes besides, while
// the engine runs; tightLimit is one that such a one's plug and tabs, which take no
// thicker wire, hardly meet (our choices).
const aimOfLimit, aimDirect, aimLinked, aimFromA, tightLimit = 0.4, 0.5, 0.1, 1.0, 0.06

// aim is what the wires of an accessory may lose, where that is less than practice and maker say
// and wires that fit its plug can meet it.
func (w *writer) aim(x *accessory) string {
	p := w.lib.Practice(w.v.practice)
	limit, share := p.DropOther, aimOfLimit
	critical := w.critical(x.kind)
	if critical {
		limit = p.DropCritical
	}
	if x.direct() {
		share = aimDirect
	}
	if w.second.capacity != "" && critical {
		share += aimLinked
	}
	share *= limit
	tight := limit < tightLimit && (x.direct() || x.isolated() && !x.contactor || critical && x.kind.Behaves == string(design.Motor))
	if tight || x.amps < aimFromA || x.kind.Aim.Share > 0 && x.kind.Aim.Share <= share {
		return ""
	}
	return ", drop aim: " + quantity.Format(share, quantity.Share)
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
	switch {
	case x.heavy():
		return w.v.heavy
	case x.position == lightsAllRound && x.kind.Stands == "": // it shines all round from the stern
		return w.v.zones["rear"]
	}
	return w.v.zones[cmp.Or(x.kind.Stands, "front")]
}

// plug lets an accessory with leads of its own come off the harness; one with
// tabs or studs is wired to those, and one that is there already as it is.
func (x *accessory) plug() string {
	if !x.isolated() && x.float == "" && !x.fitted && (x.kind.End == library.FlyingLeads || strings.HasPrefix(x.kind.End, "pin ")) {
		return ", plug: auto"
	}
	return ""
}

// fullStud is how many returns go to a frame stud before the next one is taken.
const fullStud = 5

// ground is where an accessory returns, with a length where it stands there. One
// with a feed of its own from the battery has a return of its own, too.
func (w *writer) ground(x *accessory) string {
	switch {
	case x.contactor:
		return "battery negative"
	case x.isolated() || x.heavy() || x.float != "":
		return w.negative()
	}
	g := cmp.Or(w.v.ground[w.placeOf(x)], w.v.ground[""])
	if w.v.spill != "" && g != w.v.spill {
		if w.rings++; w.rings > fullStud {
			return w.v.spill
		}
	}
	for _, e := range w.v.grounds {
		if strings.HasPrefix(e, g+":") && strings.Contains(e, "at: "+w.placeOf(x)+",") {
			return g + ", return wire: {length: 400 mm}"
		}
	}
	return g
}
