package starter

import (
	"fmt"
)

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
	for _, out := range w.allOutputs() {
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
	case x.turns() != nil:
		return x.half(0), w.home(x)
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
