package design

import (
	"fmt"

	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// Switch is a contact worked by hand, or by water or pressure, or one pole of several.
type Switch struct {
	Common
	Plugged
	Type      *library.SwitchType // nil when the design gives its rating only
	RatingA   Quantity
	FedBy     []Feed
	Returns   []Feed // where it stands in a return
	Momentary bool   // closed only while it is held, out of its position that gives nothing; by the type or the design
	// KeyOperated: worked by the ignition key; by the type or the design.
	KeyOperated bool
	// MachineOperated: worked by what moves on the machine, a door, the gear lever or a brake, which
	// grounds it by its body; by the type or the design.
	MachineOperated bool
	// Positions are those of its handle, in order; none = a plain contact. Each output is a
	// terminal that loads name, as a way of a block.
	Positions []*Position
	// Pole is the switch whose handle moves it: type, rating and place are that one's; nil =
	// it has a handle of its own.
	Pole *Switch

	poleOf Text // Pole before it is looked up
}

var switchSection = section[Switch]{
	Section: Section{Name: "switch", Shape: KindNamed,
		Doc: "A contact worked by hand, or one that water, pressure or the like works. It is closed in a situation when a load that is on is fed through it, or " +
			"when the situation says so. One that is key operated is closed with the key on and open with it off, unless it `stays live`. " +
			"With `positions` it has outputs, which parts name as they do the way of a block: `fed by: lights stern`, or of one in a return, " +
			"which joins them to ground, `returns to: bar wide`. Its position follows " +
			"from what is on, or the situation says it: `switches: {lights: anchor}`.",
		Example: "switches:\n  lamps: {rating: 10 A, at: handlebar, fed by: rear 1, wire: {colour: YE}}\n" +
			"  lights: {type: rocker 16 A, at: console, fed by: panel 2, positions: {off: none, navigation: [bow, stern], anchor: stern}}\n" +
			"  bilge: {type: rocker 16 A, at: console, fed by: pump fuse, positions: [manual, off, automatic]}\n" +
			"  gauge light: {pole of: lights, fed by: panel 3, positions: {navigation: gauges}}\n" +
			"  bar: {type: rocker 16 A, at: console, returns to: frame stud, positions: {off: none, dim: narrow, full: [narrow, wide]}}\n"},
	keys: withCommon(append([]key[Switch]{
		libraryKey(Key{Name: "type", Library: "switches", Doc: "switch of the library",
			Example: "sealed rocker 20 A"},
			(*library.Library).Switch, func(x *Switch) **library.SwitchType { return &x.Type }),
		quantityKey(Key{Name: "rating", Unit: quantity.Current, Min: 0.01, Max: 2000,
			Doc: "maximum current, when it is not of the library", Example: "10 A"},
			func(x *Switch) *Quantity { return &x.RatingA }),
		plugKey[Switch](),
		yesKey(Key{Name: "momentary", Default: "the type's, else no", Doc: "closed only while it is held; with positions it springs back to the one that gives nothing", Example: "yes"},
			func(x *Switch) *bool { return &x.Momentary }),
		yesKey(Key{Name: "key operated", Default: "the type's, else no", Doc: "worked by the ignition key: what is behind it is off with the key off", Example: "yes"},
			func(x *Switch) *bool { return &x.KeyOperated }),
		yesKey(Key{Name: "machine operated", Default: "the type's, else no", Doc: "worked by what moves on the machine, as a door, the gear lever or a brake: it may stand in the return of a lamp, buzzer or coil", Example: "yes"},
			func(x *Switch) *bool { return &x.MachineOperated }),
		positionsKey(),
		{Key: Key{Name: "pole of", Kind: KindSwitch, Example: "lights",
			Doc: "the switch whose handle moves it too, of one with several poles: type, rating and place are that one's, and the positions that it does not give itself"},
			read: func(r *reader, x *Switch, f field) { x.poleOf, _ = r.sentence(f, maxName) }},
	}, eitherKeys(func(x *Switch) *[]Feed { return &x.FedBy }, func(x *Switch) *[]Feed { return &x.Returns })...)...),
	finish: func(r *reader, x *Switch, f field) {
		r.oneSide(f)
		r.onlyOfAHandle(x, f)
		if t := x.Type; t != nil {
			if x.KeyOperated && (t.Float || t.Pressure || t.Isolates || t.Held) {
				r.report(x.Pos, fmt.Sprintf("%s: no key works a %s", f.where, t.Name),
					"no `key operated`, or a type that a key works, such as key switch 10 A")
			}
			if x.MachineOperated && (t.Float || t.Pressure || t.Isolates || t.Held || t.Key) {
				r.report(x.Pos, fmt.Sprintf("%s: no door, gear or brake works a %s", f.where, t.Name),
					"no `machine operated`, or a type that the machine works, such as door switch 5 A")
			}
			x.Momentary, x.KeyOperated, x.MachineOperated = x.Momentary || t.Held, x.KeyOperated || t.Key, x.MachineOperated || t.Machine
		}
	},
}
