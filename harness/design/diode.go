package design

import "fusewright/library"

// Diode lets current through one way: from what feeds it to what it feeds, or, in a return,
// from the load to where it returns.
type Diode struct {
	Common
	Type     *library.DiodeType
	FedBy    []Feed
	Returns  []Feed // where it stands in a return
	Reversed bool   // its cathode is towards the feed, as found
}

var diodeSection = section[Diode]{
	Section: Section{Name: "diode", Shape: KindNamed,
		Doc: "A diode in a feed: its anode is at what feeds it, and its cathode feeds on. It keeps two feeds of one part apart, or " +
			"steers a coil that two circuits pull in. In a return its cathode is where it `returns to`. A diode across a coil is the relay's `suppressed by`.",
		Example: "diodes:\n  by key: {type: silicon diode 3 A, at: under seat, fed by: key feed}\n" +
			"  by hand: {type: silicon diode 3 A, at: under seat, fed by: button}\n" +
			"relays:\n  horn: {form: mini make, fed by: horn fuse, coil: {fed by: [by key, by hand], returns to: frame stud, suppressed by: resistor}}\n"},
	keys: withCommon(append([]key[Diode]{
		libraryKey(Key{Name: "type", Library: "diodes", Required: true, Example: "silicon diode 3 A",
			Doc: "diode of the library: forward drop, rating, reverse voltage"},
			(*library.Library).Diode, func(x *Diode) **library.DiodeType { return &x.Type }),
		yesKey(Key{Name: "reversed", Default: "no", Doc: "its cathode is towards the feed, as it was found", Example: "yes"},
			func(x *Diode) *bool { return &x.Reversed }),
	}, eitherKeys(func(x *Diode) *[]Feed { return &x.FedBy }, func(x *Diode) *[]Feed { return &x.Returns })...)...),
	finish: func(r *reader, _ *Diode, f field) { r.oneSide(f) },
}
