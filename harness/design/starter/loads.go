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
		if x.whole() {
			entry = w.wired(entry, x)
		}
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

// whole tells of an accessory that is there already with a feed of its own from the battery.
func (x *accessory) whole() bool {
	return x.fitted && x.live && x.switched == "" && !x.contactor && x.float == "" && x.way == 0 && x.leads == nil
}

// fittedSize is the wire that such a one is taken to have, to be put right by what is there (common practice, no source).
func (w *writer) fittedSize(x *accessory) string {
	for _, s := range []struct {
		amps        float64
		metric, awg string
	}{{8, "1 mm²", "16 AWG"}, {16, "2.5 mm²", "12 AWG"}} {
		if x.amps <= s.amps {
			if w.afloat() {
				return s.awg
			}
			return s.metric
		}
	}
	if w.afloat() {
		return "8 AWG"
	}
	return "6 mm²"
}

// fittedRating is the fuse that such a one is taken to have: the least blade with a quarter to spare (common practice, no source).
func fittedRating(x *accessory) float64 {
	blades := []float64{3, 5, 7.5, 10, 15, 20, 25}
	if i := slices.IndexFunc(blades, func(a float64) bool { return a >= x.amps/0.75 }); i >= 0 {
		return blades[i]
	}
	return 30
}

// wired gives the wires of such a one their size.
func (w *writer) wired(entry string, x *accessory) string {
	size := w.fittedSize(x)
	feed, back, _ := strings.Cut(entry, ", returns to: ")
	if with := ", wire: {"; strings.Contains(feed, with) {
		feed = strings.Replace(feed, with, with+sized(size), 1)
	} else {
		feed += ", wire: {size: " + size + "}"
	}
	return feed + ", returns to: " + back + ", return wire: {size: " + size + "}"
}

// aimOfLimit is the share of the limit of voltage drop that the wires of an accessory are given:
// joints, contacts and fuses lose about as much again, and the rest is for age and tolerances.
// aimDirect is that of one with a relay of its own at the battery, behind fewer of them; aimFromA is
// the current from which that tells; aimLinked is what the link of a second battery takes besides, while
// the engine runs; tightLimit is one that such a one's plug and tabs, which take no
// thicker wire, hardly meet (our choices).
const aimOfLimit, aimDirect, aimLinked, aimFromA, tightLimit = 0.4, 0.5, 0.05, 1.0, 0.06

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
	case x.light != "":
		return w.lightPlace(x)
	case x.kind.Watches && w.v.zones["watch"] != "":
		return w.v.zones["watch"]
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
	case x.turns() != nil:
		return x.half(1)
	case x.contactor || x.whole():
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
