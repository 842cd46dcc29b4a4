package design

import (
	"strconv"

	"fusewright/library"
)

// Diode lets current through one way: from what feeds it to what it feeds, or, in a return,
// from the load to where it returns.
type Diode struct {
	Common
	Type     *library.DiodeType
	FedBy    []Feed
	Returns  []Feed // where it stands in a return
	Reversed bool   // its cathode is towards the feed, as found
	// Isolates is so many batteries, each over a diode of its own behind one input stud; 0 = it is a
	// single diode. Its outputs are named by their numbers, as the ways of a block.
	Isolates int
}

// Outputs are those of an isolator; one empty name stands for the only one of a single diode.
func (x *Diode) Outputs() []string {
	if x.Isolates == 0 {
		return []string{""}
	}
	list := make([]string, x.Isolates)
	for i := range list {
		list[i] = strconv.Itoa(i + 1)
	}
	return list
}

var diodeSection = section[Diode]{
	Section: Section{Name: "diode", Shape: KindNamed,
		Doc: "A diode in a feed: its anode is at what feeds it, and its cathode feeds on. It keeps two feeds of one part apart, or " +
			"steers a coil that two circuits pull in. In a return its cathode is where it `returns to`. A diode across a coil is the relay's `suppressed by`. " +
			"An isolator is one part with one input, `fed by: charging`, and a diode to each battery: `outputs: 2`, which the fuse at each battery names: " +
			"`fed by: isolator 1`.",
		Example: "diodes:\n  by key: {type: silicon diode 3 A, at: under seat, fed by: key feed}\n" +
			"  by hand: {type: silicon diode 3 A, at: under seat, fed by: button}\n" +
			"relays:\n  horn: {form: mini make, fed by: horn fuse, coil: {fed by: [by key, by hand], returns to: frame stud, suppressed by: resistor}}\n"},
	keys: withCommon(append([]key[Diode]{
		libraryKey(Key{Name: "type", Library: "diodes", Required: true, Example: "silicon diode 3 A",
			Doc: "diode of the library: forward drop, rating, reverse voltage"},
			(*library.Library).Diode, func(x *Diode) **library.DiodeType { return &x.Type }),
		yesKey(Key{Name: "reversed", Default: "no", Doc: "its cathode is towards the feed, as it was found", Example: "yes"},
			func(x *Diode) *bool { return &x.Reversed }),
		numberKey(Key{Name: "outputs", Min: 2, Max: 4, Whole: true, Default: "it is a single diode", Example: "2",
			Doc: "of an isolator: to so many batteries, each over a diode of the type"}, func(x *Diode, n float64) { x.Isolates = int(n) }),
	}, eitherKeys(func(x *Diode) *[]Feed { return &x.FedBy }, func(x *Diode) *[]Feed { return &x.Returns })...)...),
	finish: func(r *reader, x *Diode, f field) {
		r.oneSide(f)
		if x.Isolates > 0 && (x.Reversed || f.has["returns to"]) {
			r.report(x.Pos, f.where.String()+" has several outputs, and is reversed or in a return", "an isolator in a feed, or single diodes")
		}
	},
}
