package starter

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/wording"
	"fusewright/library"
)

// accessory is one load with how it is fed.
type accessory struct {
	kind     *library.LoadType
	name     string
	amps     float64
	way      int    // of the block; 0 = a feed of its own from the battery
	switched string // switch type; "" = none
	float    string // type of the float switch beside it, of a boat's bilge pump; "" = none
	relay    bool   // the switch works a relay
	// contactor: a strong motor that runs for a while at a time; a switch at hand works the
	// contactor behind its isolator.
	contactor bool
	live      bool       // with the key or the house switch off: a fuse of its own before it
	fitted    bool       // it is there already
	leads     *accessory // the one whose switch it shares; nil = it has its own
	group     []*accessory
	light     string // which of a boat's lights it is; "" = none
	position  string // of the navigation lights' switch, the output that it hangs on; "" = none
}

// direct tells that an accessory has a fuse and a relay of its own at the
// battery.
func (x *accessory) direct() bool { return x.way == 0 && x.relay && x.float == "" }

// isolated tells that an accessory has a fuse and a battery switch of its own.
func (x *accessory) isolated() bool {
	return x.way == 0 && !x.relay && x.float == "" && !x.live && x.leads == nil && x.position == ""
}

// heavy tells that an accessory is a strong motor in front, which stands at a place and
// has a loom and a return of its own.
func (x *accessory) heavy() bool {
	return x.way == 0 && x.float == "" && x.kind.Behaves == string(design.Motor) && x.kind.Stands == "" && x.leads == nil && !x.live
}

// bothSwitches are the float switch and the one by hand, either of which starts it.
func (x *accessory) bothSwitches() string {
	return fmt.Sprintf("[%s float, %s switch]", x.name, x.name)
}

// staysLive is why an accessory is live with the key off; "" = it is not.
func (x *accessory) staysLive() string {
	switch {
	case x.float != "":
		return `, stays live: "the float switch pumps the boat while nobody is on board"`
	case x.live && x.kind.Watches:
		return `, stays live: "it keeps watch while nobody is there"`
	case x.live:
		return `, stays live: "wanted with the key off"`
	}
	return ""
}

// hasKnob: what is plugged into a socket, and electronics, are switched at themselves.
func (x *accessory) hasKnob() bool { return x.kind.Sign == "electronics" || x.kind.Sign == "socket" }

// lastingA is its current and that of those behind the same switch, or that of a start which
// lasts for seconds, as a relay's contact bears it.
func (x *accessory) lastingA() (amps float64) {
	for _, y := range x.group {
		k := 1.0
		if y.kind.Inrush.TauS >= 1 {
			k = y.kind.Inrush.PeakRatio
		}
		amps += k * y.amps
	}
	return amps
}

// steadyA is the current of all behind its switch.
func (x *accessory) steadyA() (amps float64) {
	for _, y := range x.group {
		amps += y.amps
	}
	return amps
}

// directA is the current from which it gets a fuse and a relay of its
// own at the battery: two fuses and two contacts in line lose too much
// (common practice, no source).
const directA = 9

// strongA is the current from which an accessory gets a fuse and a switch of
// its own at the battery: more than a blade fuse bears for good, 0.8 of 30 A.
const strongA = 24

// handA is the current that is switched by hand at most; above it a relay saves
// the way to the dash and back (common practice, no source).
const handA = 7

// reserve is what a switch should bear over the rated current: the worst corner
// of a load's current (common practice, no source).
const reserve = 1.4

// plan looks up the accessories and says how each is fed.
func (w *writer) plan() error {
	for _, text := range w.a.Accessories {
		x, err := w.accessory(text)
		if err != nil {
			return err
		}
		w.list = append(w.list, x)
	}
	if err := w.mark(); err != nil {
		return err
	}
	w.lightsByPosition()
	if err := w.share(); err != nil {
		return err
	}
	for _, x := range w.list {
		if x.leads == nil && x.position == "" {
			w.feed(x)
		}
	}
	for _, x := range w.list {
		if (x.relay && x.float == "" && !x.live || x.contactor) && w.control == 0 {
			w.ways++
			w.control = w.ways
		}
	}
	if w.ways > maxWays {
		return fmt.Errorf("the accessories need %d ways, more than the %d of a fuse block", w.ways, maxWays)
	}
	return nil
}

// plainName is what a name of one's own may be made of, so that the text needs no quotes.
var plainName = regexp.MustCompile(`^[\pL][\pL\pN]*([ -][\pL\pN]+)*$`)

// mostNear are how many accessories with a word in common are offered.
const mostNear = 6

// accessory reads "KIND" or "NAME: KIND".
func (w *writer) accessory(text string) (*accessory, error) {
	name, of, own := strings.Cut(text, ":")
	if !own {
		of = name
	}
	kind := w.lib.Load(strings.TrimSpace(of))
	if kind == nil {
		of, names := strings.TrimSpace(of), w.lib.Names("loads")
		if near := problem.Nearest(of, names); near != "" {
			return nil, fmt.Errorf("the library has no accessory %q (did you mean %q?)", of, near)
		}
		expected := "see fusewright parts load"
		if kin := problem.Kin(of, names); len(kin) < len(names) {
			expected = wording.Some(kin, mostNear)
		}
		return nil, fmt.Errorf("the library has no accessory %q (expected one of the library: %s; or a name of your own and one of them, as %q)", of, expected, "cab radio: radio")
	}
	if kind.RatedV > 1.5*w.v.systemV() {
		return nil, fmt.Errorf("%s is for %g V; the vehicle has %g V", kind.Name, kind.RatedV, w.v.systemV())
	}
	if name = strings.TrimSpace(name); own && !plainName.MatchString(name) {
		return nil, fmt.Errorf("%q is no name for an accessory (expected letters, digits, spaces and hyphens, such as left lamp)", name)
	}
	x := &accessory{kind: kind, amps: kind.CurrentA}
	if kind.PowerW > 0 {
		x.amps = kind.PowerW / kind.RatedV
	}
	x.amps /= w.v.scale()
	if !own && !plainName.MatchString(name) {
		name = kind.Name
	}
	x.name, x.group = w.unique(name), []*accessory{x}
	return x, nil
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

// named is the accessory of a name.
func (w *writer) named(name string) (*accessory, error) {
	name = strings.TrimSpace(name)
	var names []string
	for _, x := range w.list {
		if strings.EqualFold(x.name, name) {
			return x, nil
		}
		names = append(names, x.name)
	}
	return nil, fmt.Errorf("no accessory is named %q (expected %s)", name, wording.Or(names))
}

// mark says of each accessory whether it stays live, and whether it is there already.
func (w *writer) mark() error {
	for _, x := range w.list {
		x.live = x.kind.Watches
	}
	for _, set := range []struct {
		names []string
		put   func(*accessory)
	}{{w.a.Live, func(x *accessory) { x.live = true }}, {w.a.Fitted, func(x *accessory) { x.fitted = true }}} {
		for _, name := range set.names {
			x, err := w.named(name)
			if err != nil {
				return err
			}
			set.put(x)
		}
	}
	return nil
}

// share gives those that one switch works together a leader. Without an answer lamps of one
// kind share one, as a pair does.
func (w *writer) share() error {
	groups := w.a.Together
	if groups == nil {
		groups = w.pairs()
	}
	for _, group := range groups {
		if w.shownTogether(group) {
			continue
		}
		var first *accessory
		for _, name := range strings.Split(group, "+") {
			x, err := w.named(name)
			switch {
			case err != nil:
				return err
			case x == first:
				return fmt.Errorf("%s is named twice; name another accessory that its switch works", x.name)
			case x.leads != nil || len(x.group) > 1:
				return fmt.Errorf("%s shares a switch already", x.name)
			case w.standsAlone(x) != "":
				return fmt.Errorf("%s shares no switch: %s", x.name, w.standsAlone(x))
			}
			if first == nil {
				first = x
				continue
			}
			x.leads, x.group = first, nil
			first.group = append(first.group, x)
		}
	}
	return nil
}

// standsAlone is why an accessory shares no switch; "" = it may.
func (w *writer) standsAlone(x *accessory) string {
	switch {
	case x.position != "":
		return "it hangs on the one of the navigation lights, whose positions show what the rules want together"
	case x.kind.Bilge && w.afloat():
		return "a float switch works it, and one by hand beside it"
	case x.live:
		return "it stays live, through a fuse of its own at the battery"
	case x.kind.Behaves == string(design.Motor) && x.amps > strongA:
		return "it has a fuse and an isolator of its own at the battery"
	}
	return ""
}

// pairs are lamps of one kind.
func (w *writer) pairs() (groups []string) {
	by := map[*library.LoadType][]string{}
	var kinds []*library.LoadType
	for _, x := range w.list {
		if (x.kind.Sign == string(design.SignLED) || x.kind.Sign == string(design.SignLamp)) && x.position == "" && !x.live {
			if len(by[x.kind]) == 0 {
				kinds = append(kinds, x.kind)
			}
			by[x.kind] = append(by[x.kind], x.name)
		}
	}
	for _, k := range kinds {
		if len(by[k]) > 1 {
			groups = append(groups, strings.Join(by[k], " + "))
		}
	}
	return groups
}

// feed chooses way, switch and relay of an accessory.
func (w *writer) feed(x *accessory) {
	if x.kind.Bilge && w.afloat() && w.floated(x) {
		return
	}
	shares := len(x.group) > 1
	if x.lastingA() > strongA && !x.live && !shares {
		x.contactor = x.kind.Behaves == string(design.Motor) && x.kind.OnForS > 0
		x.switched = "battery switch 100 A"
		if !w.bears(w.lib.Switch(x.switched), x) {
			x.switched = "battery switch 300 A"
		}
		return
	}
	byHand := !x.hasKnob() || shares
	if x.live {
		if byHand && !x.kind.Watches {
			x.switched = w.v.rocker
			x.relay = !w.bears(w.lib.Switch(x.switched), x) || x.steadyA() > handA
		}
		return
	}
	if byHand && x.steadyA() > directA {
		x.switched, x.relay = w.v.rocker, true
		return
	}
	w.ways++
	x.way = w.ways
	if !byHand {
		return
	}
	x.switched = w.v.rocker
	x.relay = !w.bears(w.lib.Switch(x.switched), x) || x.steadyA() > handA
}

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
	x.float, x.switched, x.live = float.Name, w.v.rocker, false
	x.relay = !w.bears(float, x) || !w.bears(w.lib.Switch(x.switched), x)
	return true
}

// bears tells that a switch stands what is behind it with reserve.
func (w *writer) bears(s *library.SwitchType, x *accessory) bool {
	return s != nil && !slices.ContainsFunc(x.group, func(y *accessory) bool {
		return design.Behaviour(y.kind.Behaves).ContactA(s.ResistiveA, s.LampA, s.MotorA) < reserve*x.steadyA()
	})
}

func (w *writer) afloat() bool { return w.lib.Practice(w.v.practice).Afloat }

// critical tells what may lose the least voltage on its way: afloat what the library says, and
// electronics (ABYC E-11, two sources), everywhere what its maker wants to lose little while it
// runs, as a fridge's compressor does, which stops on low voltage (common practice, no source); what
// loses more while it starts slowly, as a heater, its maker's aim holds.
func (w *writer) critical(k *library.LoadType) bool {
	return k.Aim.Share > 0 && k.Aim.Share < w.lib.Practice(w.v.practice).DropCritical && k.Inrush.TauS < 10 || w.afloat() && (k.Sign == "electronics" || k.CriticalAfloat && !k.Bilge)
}
