package design

import (
	"fmt"

	"fusewright/library"
)

var relaySection = section[Relay]{
	Section: Section{Name: "relay", Shape: KindNamed,
		Doc: "A coil with contacts, terminals after DIN 72552: `fed by` is terminal 30; parts fed by the " +
			"relay's name hang on 87, or on the contact named, as in `keyed 87a`.",
		Example: "relays:\n  keyed:\n    form: mini make\n    at: under seat\n    fed by: main\n" +
			"    coil: {fed by: pilot, returns to: frame stud, suppressed by: resistor}\n"},
	keys: withCommon(append([]key[Relay]{
		relayFormKey(),
		recordKey(Key{Name: "coil", Doc: "its coil, terminals 86 and 85", Example: "see coil"},
			&coilSection, func(r *reader, x *Relay, f field) *Coil {
				x.Coil.Pos = r.pos(f.node)
				return &x.Coil
			}),
	}, eitherKeys(func(x *Relay) *[]Feed { return &x.FedBy }, func(x *Relay) *[]Feed { return &x.Returns })...)...),
	finish: func(r *reader, x *Relay, f field) {
		x.FormAuto = x.FormAuto || !f.has["form"]
		r.oneSide(f)
		r.chosenInReturn(f, x.FormAuto, "form")
	},
}

// relayFormKey finds the form whose coil is for the system voltage.
func relayFormKey() key[Relay] {
	return orAuto(rowKey(Key{Name: "form", Library: "relay forms", Default: "`auto`", Example: "mini make",
		Doc: "relay form; of a family, the one for the system voltage is taken; `auto` is chosen by sizing"},
		func(r *reader, name string) *library.RelayForm {
			return r.lib.RelayFormFor(name, r.d.SystemV.Value)
		}, func(x *Relay) **library.RelayForm { return &x.Form }), func(x *Relay) { x.FormAuto = true })
}

// The forms that stand in until sizing chooses one.
const usualRelay, usualChangeover = "mini make", "mini changeover"

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
		if broken[x] {
			name = usualChangeover
		}
		if x.Form = r.lib.RelayFormFor(name, r.d.SystemV.Value); x.Form == nil {
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
