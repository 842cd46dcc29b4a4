package design

import (
	"fmt"

	"fusewright/harness/design/problem"
	"fusewright/library"
)

// Relay is a coil with contacts; contact feed is terminal 30.
type Relay struct {
	Common
	Form *library.RelayForm
	// FormAuto tells that the form is left to package sizing; until then it is
	// the usual one with the contacts in use.
	FormAuto bool
	FedBy    []Feed
	Returns  []Feed // of contacts that stand in a return, from terminal 30; see Rests
	Coil     Coil
	// Rests tells that it is half of a reversing contactor: its feed is on 87, what
	// hangs on it is on 30, and that rests on 87a, from where Returns lead.
	Rests bool
	// Half is the relay in whose case it is: it has that one's form and place, and
	// its feed and return; nil = it has a case of its own.
	Half *Relay
	// Latches tells that each pulse at the coil turns it over, and it stays so.
	Latches bool
	OffDelayS,
	OnDelayS Quantity // how long it stays closed when its coil has lost supply; how long until it closes

	CoilBy *Charger // converter that feeds its coil; nil = that has the system's voltage

	halfOf   Text   // Half before it is looked up
	formSaid string // Form as it is written
}

// Wired is the relay of the case at whose terminals the feed and return of the
// contacts are: itself, or the other half.
func (r *Relay) Wired() *Relay {
	if r.Half != nil {
		return r.Half
	}
	return r
}

// Coil is terminals 86 (fed) and 85 (return).
type Coil struct {
	FedBy      []Feed
	Returns    []Feed
	Suppressed string // "none", "resistor", "diode", "zener"; "" = not said
	Pos        problem.Pos
}

var relaySection = section[Relay]{
	Section: Section{Name: "relay", Shape: KindNamed,
		Doc: "A coil with contacts, terminals after DIN 72552: `fed by` is terminal 30; parts fed by the " +
			"relay's name are on 87, or on the contact named, as in `keyed 87a`. A form that senses closes by the voltage of its feed: of its coil it says only where it returns. With both `fed by` and `returns to` it is half of a " +
			"reversing contactor: a motor `fed by` one half and `returns to` the other runs one way or the other by the " +
			"coil that is on, and rests with both ends on the return. One that latches stays as the last pulse at its coil left it, whatever " +
			"its coil has: closed in situations where a load behind it is on, or that list it as `closed`. What an `off delay` keeps on with the key " +
			"off is looked at in a situation of its own, for that time.",
		Example: "relays:\n  keyed:\n    form: mini make\n    at: under seat\n    fed by: main\n" +
			"    coil: {fed by: pilot, returns to: frame stud, suppressed by: resistor}\n" +
			"  reel in: {form: winch reversing contactor, at: front, fed by: winch, returns to: battery negative,\n" +
			"    coil: {fed by: in, returns to: frame stud, suppressed by: diode}}\n" +
			"  reel out: {other half of: reel in, coil: {fed by: out, returns to: frame stud, suppressed by: diode}}\n" +
			"  courtesy: {form: mini make, off delay: 30 s, at: under seat, fed by: main, coil: {fed by: door, returns to: frame stud, suppressed by: resistor}}\n" +
			"  cabin: {latches: yes, at: under seat, fed by: main, coil: {fed by: push, returns to: frame stud, suppressed by: diode}}\n"},
	keys: withCommon(append(append([]key[Relay]{
		relayFormKey(),
		recordKey(Key{Name: "coil", Doc: "its coil, terminals 86 and 85", Example: "see coil"},
			&coilSection, func(r *reader, x *Relay, f field) *Coil {
				x.Coil.Pos = r.pos(f.node)
				return &x.Coil
			}),
		{Key: Key{Name: "other half of", Kind: KindRelay, Example: "winch in",
			Doc: "the relay in whose case it is, of a reversing contactor: form, place, feed and return are that one's"},
			read: func(r *reader, x *Relay, f field) { x.halfOf, _ = r.sentence(f, maxName) }},
	}, stayKeys()...), eitherKeys(func(x *Relay) *[]Feed { return &x.FedBy }, func(x *Relay) *[]Feed { return &x.Returns })...)...),
	finish: func(r *reader, x *Relay, f field) {
		x.Rests = f.has["fed by"] && f.has["returns to"] || f.has["other half of"]
		x.FormAuto = !f.has["other half of"] && (x.FormAuto || !f.has["form"])
		r.onlyOfACase(x, f)
		r.checkStays(x, f)
		if !x.Rests {
			r.oneSide(f)
			r.chosenInReturn(f, x.FormAuto, "form")
		}
	},
}

// onlyOfACase refuses what the other half of a reversing contactor has already said.
func (r *reader) onlyOfACase(x *Relay, f field) {
	for _, key := range []string{"form", "at", "fed by", "wire", "returns to", "return wire"} {
		if f.has["other half of"] && f.has[key] {
			r.report(r.pos(f.node), fmt.Sprintf("%s: %q is that of the other half", f.where, key), "it there alone")
		}
	}
}

// joinHalves finds the halves of reversing contactors, and checks the contacts of
// relays that rest.
func (r *reader) joinHalves() {
	taken := map[*Relay]*Relay{}
	for _, x := range r.d.Relays {
		if !x.halfOf.Given() {
			continue
		}
		r.unplaced[x] = true // until its case is found
		found := namedParts[*Relay](r, where{"relay", x.Name}, "relay", []Text{x.halfOf})
		if len(found) == 0 {
			continue
		}
		half := found[0]
		switch {
		case half == x || half.halfOf.Given():
			r.report(x.halfOf.Pos, fmt.Sprintf("relay %s: %s has no case of its own", quoted(x.Name), quoted(half.Name)), "the half that gives form and feed")
		case taken[half] != nil:
			r.report(x.halfOf.Pos, fmt.Sprintf("relay %s: the other half of %s is %s already", quoted(x.Name), quoted(half.Name), quoted(taken[half].Name)), "")
		case half.Form == nil:
			r.report(x.halfOf.Pos, fmt.Sprintf("relay %s: %s does not say its form", quoted(x.Name), quoted(half.Name)), "a reversing contactor by name")
		case !half.Form.Reversing:
			r.report(x.halfOf.Pos, fmt.Sprintf("relay %s: %s (%s) has no other half", quoted(x.Name), quoted(half.Name), half.Form.Name), "a reversing contactor")
		default:
			taken[half], x.Half = x, half
			x.Form, x.FormAuto, x.At = half.Form, false, half.At
			r.unplaced[x] = r.unplaced[half]
		}
	}
	for _, x := range r.d.Relays {
		switch {
		case x.Form == nil || x.FormAuto:
		case x.Form.Senses && r.byFeeds[&x.Coil.FedBy] != nil:
			r.report(x.Coil.Pos, fmt.Sprintf("relay %s: %s senses the voltage of its own feed, and its coil is fed by nothing else", quoted(x.Name), x.Form.Name), "coil: {returns to: battery negative}")
		case x.Form.Senses && (x.Rests || r.inReturn(x)):
			r.report(x.Pos, fmt.Sprintf("relay %s: %s senses the voltage of its feed, and stands in none", quoted(x.Name), x.Form.Name), "`fed by` the battery whose charging closes it")
		case x.Rests && !x.Form.Changeover:
			r.report(x.Pos, fmt.Sprintf("relay %s returns, but %s has no break contact to rest on", quoted(x.Name), x.Form.Name), "a changeover")
		case x.Form.Reversing && !x.Rests:
			r.report(x.Pos, fmt.Sprintf("relay %s: %s rests on a return, and does not say on which", quoted(x.Name), x.Form.Name), "\"returns to\" of it")
		}
	}
}

// checkReversed refuses what only a motor stands: to lie between two relays that rest.
func (r *reader) checkReversed() {
	for _, l := range r.d.Loads {
		switch {
		case !l.Reverses():
		case len(l.FedBy) > 1 || len(l.Returns) > 1:
			r.report(l.Pos, fmt.Sprintf("load %s is between two relays that rest, and has another feed or return", quoted(l.Name)),
				"one half at each end")
		case l.Behaves != Motor || l.Polarised:
			r.report(l.Pos, fmt.Sprintf("load %s gets either polarity between two relays that rest", quoted(l.Name)),
				"a motor that is not polarised, or a return to a ground")
		}
	}
}

// relayFormKey finds the form whose coil is for the system voltage.
func relayFormKey() key[Relay] {
	row := rowKey(Key{Name: "form", Library: "relay forms", Default: "`auto`", Example: "mini make",
		Doc: "relay form; of a family, the one for the voltage that feeds the coil is taken; `auto` is chosen by sizing"},
		func(r *reader, name string) *library.RelayForm {
			return r.lib.RelayFormFor(name, r.d.SystemV.Value)
		}, func(x *Relay) **library.RelayForm { return &x.Form })
	read := row.read
	row.read = func(r *reader, x *Relay, f field) {
		if read(r, x, f); x.Form != nil {
			x.formSaid = follow(f.node).Value
		}
	}
	return orAuto(row, func(x *Relay) { x.FormAuto = true })
}

// The forms that stand in until sizing chooses one.
const usualRelay, usualChangeover, usualLatch = "mini make", "mini changeover", "impulse relay"

// fillRelays gives relays whose form is left open the usual one that has the
// contacts in use.
func (r *reader) fillRelays() {
	broken := map[Part]bool{} // a feed hangs on the break contact
	for _, c := range r.connections {
		for _, f := range *c.feeds {
			if f.From.Terminal == "87a" {
				broken[f.From.Part] = true
			}
		}
	}
	for _, x := range r.d.Relays {
		if !x.FormAuto || x.Form != nil {
			continue
		}
		name := usualRelay
		switch {
		case x.Latches:
			name = usualLatch
		case broken[x] || x.Rests:
			name = usualChangeover
		}
		if x.Form = r.lib.RelayFormFor(name, r.d.CoilV(x)); x.Form == nil {
			r.report(x.Pos, fmt.Sprintf("relay %s: no form is given and the library has no %q",
				quoted(x.Name), name), oneOf(r.lib.Names("relay forms")))
		}
	}
}

var coilSection = section[Coil]{
	Section: Section{Name: "coil", Shape: KindRecord,
		Doc: "A relay's coil. What it does when it is switched off, the suppression, matters to what " +
			"switches it.",
		Example: "coil: {fed by: pilot, returns to: frame stud, suppressed by: resistor}\n"},
	keys: append(append(feedKeys(func(x *Coil) *[]Feed { return &x.FedBy }),
		returnKeys(func(x *Coil) *[]Feed { return &x.Returns })...),
		choiceKey(Key{Name: "suppressed by", Choices: []string{"none", "resistor", "diode", "zener"},
			Doc: "what takes the coil's voltage peak; not given is said in the findings", Example: "resistor"},
			func(x *Coil) *string { return &x.Suppressed })),
}
