package design

// Bank is a battery beside the first, such as the house battery of a boat or a camper: a
// source of its own, which what feeds it charges.
type Bank struct {
	Common
	Store   Battery
	FedBy   []Feed // its positive post
	Returns []Feed // its negative post; none = it is one with the first battery's
}

// NegativeOf is what a returns' list calls the negative post of a further battery.
func (b *Bank) NegativeOf() string { return b.Name + " " + bankNegative }

// bankNegative is the terminal of a further battery that returns name: `house negative`.
const bankNegative = "negative"

var bankSection = section[Bank]{
	Section: Section{Name: "further battery", Shape: KindNamed,
		Doc: "A battery beside the first. Loads are `fed by` its name, and may return to its name and `negative`. What links it to the first " +
			"battery is what it is `fed by`: over a battery switch or a voltage-sensing relay, with a fuse at each end. The " +
			"current of a link flows either way. A diode from the first battery lets both run down together; an isolator is `fed by: charging` (see diode), and " +
			"keeps each battery to itself.",
		Example: "batteries:\n  house: {chemistry: AGM, capacity: 110 Ah, at: locker, fed by: house end}\n" +
			"fuses:\n  start end: {type: marine strip, rating: 100 A, at: engine, fed by: battery, wire: {length: 150 mm}}\n" +
			"  house end: {type: marine strip, rating: 100 A, at: locker, fed by: emergency start}\n" +
			"switches:\n  emergency start: {type: battery switch 300 A, at: engine, fed by: start end}\n" +
			"# or behind an isolator at the alternator:\n" +
			"battery: {chemistry: AGM, capacity: 75 Ah, at: engine, fed by: start end}\n" +
			"diodes:\n  isolator: {type: diode isolator 70 A, outputs: 2, at: engine, fed by: charging}\n" +
			"fuses:\n  start end: {type: marine strip, rating: 100 A, at: engine, fed by: isolator 1}\n" +
			"  house end: {type: marine strip, rating: 100 A, at: locker, fed by: isolator 2}\n"},
	keys: withCommon(append(append(storeKeys(func(b *Bank) *Battery { return &b.Store }),
		feedKeys(func(b *Bank) *[]Feed { return &b.FedBy })...), bankReturnKeys()...)...),
	finish: func(r *reader, b *Bank, f field) {
		b.Store.finish(r, f)
		b.Store.Pos = b.Pos
	},
}

func bankReturnKeys() []key[Bank] {
	back := returnKeys(func(b *Bank) *[]Feed { return &b.Returns })
	back[0].Default = "`battery negative`, over no resistance"
	back[0].Doc = "where its negative post is joined to the rest by a cable: a ground or `battery negative`"
	return back
}

// HasBanks tells whether there is more than one battery.
func (d *Design) HasBanks() bool { return len(d.Batteries) > 0 }
