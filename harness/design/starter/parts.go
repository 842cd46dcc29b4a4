package starter

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
)

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
		list = append(list, mainPart+": {"+w.firstFuse(w.postChemistry())+w.mainRating()+"at: "+w.v.source+", fed by: "+w.post()+", wire: {length: 150 mm}}")
		if w.v.tap != "" {
			list = append(list, pilotPart+": {at: "+w.v.block+", fed by: "+w.tap+", wire: {length: 150 mm}}")
		}
	}
	list = append(list, w.barFuse()...)
	ways := 0
	for _, x := range w.list {
		if x.way > 0 || x.leads != nil || x.position != "" {
			continue
		}
		from, size, kind := w.post(), "", ""
		if w.behindMain(x) {
			from, size = mainPart, sized(w.v.tail) // as thick as the wire upstream
		}
		if w.plusBar && w.small(x) {
			ways++
			from, size = fmt.Sprintf("%s %d", plusBarPart, ways), sized(w.barWire())
		}
		switch {
		case x.contactor:
			from, kind = "battery", w.motorFuse()
		case x.isolated() && from == w.post():
			kind = w.firstFuse(w.postChemistry())
		case from == w.post() && w.lithium(w.postChemistry()):
			kind = w.firstFuse(w.postChemistry())
		}
		if usualA := x.kind.Fuse.RatingA / w.v.scale(); usualA > 0 && from != w.post() { // behind a larger one, which leaves it room
			kind = "rating: " + quantity.Plain(usualA, quantity.Current) + ", "
		}
		if x.whole() {
			from, size, kind = "battery", sized(w.fittedSize(x)), fmt.Sprintf("type: blade C, rating: %g A, ", fittedRating(x))
		}
		entry := x.name + " fuse: {" + kind + "at: " + w.home(x) + ", fed by: " + from + ", wire: {" + size + "length: 150 mm}"
		if x.live {
			entry += x.staysLive()
		}
		if x.whole() {
			entry += ", fitted: yes"
		}
		list = append(list, entry+"}")
	}
	return list
}

// motorFuse is that of a strong motor, whose cable is so thick that a short draws all that the first battery gives.
func (w *writer) motorFuse() string {
	strip, c := w.lib.FuseType(w.v.first), w.lib.Chemistry(w.a.Battery)
	if ah, err := quantity.Parse(w.a.Capacity, quantity.Charge); strip != nil && err == nil && ah > 0 &&
		c.OpenCircuit[len(c.OpenCircuit)-1].Volts/c.Ohm(ah) > strip.BreakingAt(w.v.systemV()) {
		return "type: class T, "
	}
	return w.firstFuse(w.a.Battery)
}

// firstFuse is the key of the type of a fuse at a battery's post, in a holder: of lithium, whose short is
// stronger than a strip breaks, one of class T (common practice, no source); "" = left open.
func (w *writer) firstFuse(chemistry string) string {
	switch {
	case w.v.first == "":
		return ""
	case w.lithium(chemistry):
		return "type: class T, "
	}
	return "type: " + w.v.first + ", "
}

// behindMain tells that an accessory's own fuse hangs on the main fuse.
func (w *writer) behindMain(x *accessory) bool {
	return w.v.tail != "" && w.ways > 0 && x.direct() && !x.live || w.tapsMain(x)
}

// tapsMain tells that what stays live hangs on the main fuse: a small fuse does not break what a short at the post drives
// through a short wire. On lithium it has a bar there.
func (w *writer) tapsMain(x *accessory) bool {
	return w.v.tail != "" && w.ways > 0 && x.live && x.leads == nil && x.position == "" && x.float == "" && !w.lithium(w.postChemistry())
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
		switch {
		case x.contactor && x.turns() != nil:
			list = append(list, w.reversing(x)...)
		case x.contactor:
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
		return w.barBlock()
	}
	from := relayPart
	if w.v.tap == "" {
		from = housePart
	}
	list := append(w.barBlock(), blockPart+":", "  at: "+w.v.block, "  fed by: "+from)
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
	list = append(list, w.lightSwitch()...)
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
			list = append(list, w.buttons(x)...)
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
