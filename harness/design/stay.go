package design

import (
	"fmt"
	"slices"

	"fusewright/harness/design/quantity"
)

// stayKeys say what keeps a relay's contacts where they are when its coil has changed.
func stayKeys() []key[Relay] {
	most := 86_400.0
	return []key[Relay]{
		yesKey(Key{Name: "latches", Default: "as its form does", Example: "yes",
			Doc: "each pulse at its coil turns it over, and it stays so: an impulse relay"},
			func(x *Relay) *bool { return &x.Latches }),
		quantityKey(Key{Name: "off delay", Unit: quantity.Duration, Min: 0.1, Max: most, Example: "30 s",
			Doc: "how long it stays closed after its coil has lost supply", Default: "none"},
			func(x *Relay) *Quantity { return &x.OffDelayS }),
		quantityKey(Key{Name: "on delay", Unit: quantity.Duration, Min: 0.1, Max: most, Example: "5 s",
			Doc: "how long its coil is supplied before it closes", Default: "none"},
			func(x *Relay) *Quantity { return &x.OnDelayS }),
	}
}

// checkStays refuses what no relay does; one of a bistable form latches.
func (r *reader) checkStays(x *Relay, f field) {
	if x.Form != nil && !x.FormAuto {
		switch {
		case x.Latches && !x.Form.Bistable:
			var latching []string
			for _, form := range r.lib.RelayForms {
				if form.Bistable {
					latching = append(latching, form.Name)
				}
			}
			r.report(x.Pos, fmt.Sprintf("%s: %s does not latch", f.where, x.Form.Name), oneOf(latching))
		case f.has["latches"] && !x.Latches && x.Form.Bistable:
			r.report(x.Pos, fmt.Sprintf("%s: %s latches", f.where, x.Form.Name), "\"latches: yes\", or another form")
		}
		x.Latches = x.Latches || x.Form.Bistable
	}
	delayed := x.OffDelayS.Given() || x.OnDelayS.Given()
	switch {
	case x.Latches && delayed:
		r.report(x.Pos, f.where.String()+": one that latches waits for no time", "\"latches\", or a delay")
	case (x.Latches || delayed) && x.Rests:
		r.report(x.Pos, f.where.String()+": half of a reversing contactor follows its coil", "a relay of its own before its coil")
	case delayed && x.Form != nil && x.Form.Senses:
		r.report(x.Pos, fmt.Sprintf("%s: %s follows the voltage of its feed", f.where, x.Form.Name), "no delay")
	}
}

// latched parts the relays that latch from the names of what is closed.
func (r *reader) latched(of where, texts []Text) (relays []*Relay, rest []Text) {
	for _, t := range texts {
		x, ok := r.names[fold(t.Value)].part.(*Relay)
		switch {
		case !ok:
			rest = append(rest, t)
		case !x.Latches:
			r.report(t.Pos, fmt.Sprintf("%s: relay %s is closed by its coil", of, quoted(x.Name)), "switches, and relays that latch")
		case slices.Contains(relays, x):
			r.report(t.Pos, fmt.Sprintf("%s: %s is named twice", of, quoted(t.Value)), "each name once")
		default:
			relays = append(relays, x)
		}
	}
	return relays, rest
}

// deriveDelays adds the time after the key is off in which relays with an off delay are
// still closed, with the loads behind them on.
func (r *reader) deriveDelays() {
	var held []*Relay
	longestS := 0.0
	for _, x := range r.d.Relays {
		if x.OffDelayS.Given() {
			held, longestS = append(held, x), max(longestS, x.OffDelayS.Value)
		}
	}
	if len(held) == 0 {
		return
	}
	r.derive("off delay running", KeyOff, 0, false)
	s := r.d.Situations[len(r.d.Situations)-1]
	s.Held, s.LastsS = held, longestS
	for _, l := range r.d.Loads {
		if behind(l, held, map[Part]bool{}) {
			s.On = append(s.On, l)
		}
	}
}

// overlapS is from which delay on what it keeps as it was counts as on together with what follows the coil at once: a fuse
// at one and a half times its rating opens within minutes, a wire warms over as long, and seconds harm neither. Common
// practice, no source.
const overlapS = 30

// deriveOverlaps adds, for each switch that works the coil of a relay with a long delay, the time after it was moved: what
// the relay still feeds is on beside what the switch feeds now.
func (r *reader) deriveOverlaps() {
	long := func(q Quantity) bool { return q.Given() && q.Value >= overlapS }
	relays := func(delay func(*Relay) Quantity, works *Switch) (list []*Relay, longestS float64) {
		for _, x := range r.d.Relays {
			if d := delay(x); long(d) && (works == nil || r.worked(x, works)) {
				list, longestS = append(list, x), max(longestS, d.Value)
			}
		}
		return list, longestS
	}
	off := func(x *Relay) Quantity { return x.OffDelayS }
	on := func(x *Relay) Quantity { return x.OnDelayS }
	add := func(name string, held, waiting []*Relay, lastsS float64) *Situation {
		r.derive(name, KeyOn, 0, true)
		s := r.d.Situations[len(r.d.Situations)-1]
		s.Held, s.Waiting, s.LastsS = held, waiting, lastsS
		return s
	}
	allOff, offS := relays(off, nil)
	allOn, onS := relays(on, nil)
	for _, x := range r.d.Switches {
		worksOff, _ := relays(off, x)
		worksOn, _ := relays(on, x)
		switch {
		case x.Pole != nil:
		case x.Positions == nil && len(worksOff) > 0:
			add("key on, "+x.Name+" just off", allOff, nil, offS).Open = []*Switch{x}
		case x.Positions != nil:
			for _, p := range x.Positions {
				set := Setting{x, p.Name}
				if len(worksOff) > 0 {
					add("key on, "+set.String()+", off delay running", allOff, nil, offS).Set = []Setting{set}
				}
				if len(worksOn) > 0 {
					waiting := slices.DeleteFunc(slices.Clone(allOn), func(w *Relay) bool { return slices.Contains(allOff, w) })
					add("key on, "+set.String()+", on delay running", allOff, waiting, max(offS, onS)).Set = []Setting{set}
				}
			}
		}
	}
	if len(allOn) > 0 {
		add("key on, on delay running", nil, allOn, onS)
	}
}

// worked tells whether the coil of a relay hangs on a switch.
func (r *reader) worked(x *Relay, by *Switch) bool {
	met := map[Part]bool{}
	var hangs func(p Part) bool
	hangs = func(p Part) bool {
		if s, ok := p.(*Switch); ok && s.Lead() == by {
			return true
		}
		if p == nil || met[p] {
			return false
		}
		met[p] = true
		for _, list := range slices.Concat(Feeds(p), Returns(p)) {
			for _, f := range *list {
				if hangs(f.From.Part) {
					return true
				}
			}
		}
		return false
	}
	feeds, returns := Feeds(x), Returns(x)
	for _, list := range slices.Concat(feeds[1:], returns[1:]) {
		for _, f := range *list {
			if hangs(f.From.Part) {
				return true
			}
		}
	}
	return false
}

// behind tells whether one of the relays feeds a part or is in its return.
func behind(p Part, relays []*Relay, met map[Part]bool) bool {
	if x, ok := p.(*Relay); ok && slices.Contains(relays, x) {
		return true
	}
	if p == nil || met[p] {
		return false
	}
	met[p] = true
	feeds, returns := Feeds(p), Returns(p)
	if _, ok := p.(*Relay); ok { // not by its coil
		feeds, returns = feeds[:1], returns[:1]
	}
	for _, list := range slices.Concat(feeds, returns) {
		for _, f := range *list {
			if behind(f.From.Part, relays, met) {
				return true
			}
		}
	}
	return false
}
