package design

import (
	"fmt"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// Battery is the stored source.
type Battery struct {
	Chemistry     *library.Chemistry
	CapacityAh    Quantity
	RateH         Quantity // hour rate of the capacity
	ResistanceOhm Quantity // internal
	Board         Quantity // current that its protection lets through for good
	// InSeries is of how many equal batteries one after another it is made; 0 = it is one.
	// Capacity, resistance and board are those of one of them. Links are the cables from
	// each to the next, which come from and lead to it.
	InSeries int
	Links    []Feed
	// FedBy is, of the first battery, what the charging system at its own stud charges it through.
	FedBy []Feed
	Post  *BatteryPart // of the first battery, as feeds name it
	At    *Place
	Pos   problem.Pos
}

var batterySection = section[Battery]{
	Section: Section{Name: "battery", Shape: KindRecord,
		Doc: "The stored source. Its posts are named `battery` (positive) in feeds and `battery negative` " +
			"in returns.",
		Example: "battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 9 mΩ, at: battery tray}\n"},
	keys: append(append(storeKeys(func(b *Battery) *Battery { return b }), chargedKeys()...),
		placeKey(Key{Name: "at", Doc: "its place", Example: "battery tray"},
			func(b *Battery) **Place { return &b.At })),
	finish: func(r *reader, b *Battery, f field) { b.finish(r, f) },
}

func chargedKeys() []key[Battery] {
	feed := feedKeys(func(b *Battery) *[]Feed { return &b.FedBy })
	feed[0].Default, feed[0].Example = "the charging system is at its posts", "start end"
	feed[0].Doc = "where something is `fed by: charging`: what leads from there to its positive post, such as the fuse at it behind an isolator"
	return feed
}

// storeKeys are the keys of what stores, of the first battery and of further ones.
func storeKeys[X any](of func(*X) *Battery) []key[X] {
	return []key[X]{
		libraryKey(Key{Name: "chemistry", Library: "batteries", Required: true, Doc: "kind of battery",
			Example: "AGM"},
			(*library.Library).Chemistry, func(x *X) **library.Chemistry { return &of(x).Chemistry }),
		quantityKey(Key{Name: "capacity", Unit: quantity.Charge, Min: 0.1, Max: 10_000, Required: true,
			Doc: "rated capacity"}, func(x *X) *Quantity { return &of(x).CapacityAh }),
		quantityKey(Key{Name: "rate", Unit: quantity.Duration, Min: 360, Max: 200 * 3600, per: 3600,
			Doc: "hour rate of the capacity", Default: "the chemistry's usual", Example: "10 h"},
			func(x *X) *Quantity { return &of(x).RateH }),
		quantityKey(Key{Name: "resistance", Unit: quantity.Resistance, Min: 1e-5, Max: 10,
			Doc: "internal resistance; of batteries in series that of one of them", Default: "from chemistry and capacity"},
			func(x *X) *Quantity { return &of(x).ResistanceOhm }),
		quantityKey(Key{Name: "board", Unit: quantity.Current, Min: 0.1, Max: 5000, Example: "100 A",
			Doc:     "of lithium: the current that its protection lets through for good, before it switches the battery off",
			Default: "of a house pack as many amperes as its Ah; none of others"},
			func(x *X) *Quantity { return &of(x).Board }),
		numberKey(Key{Name: inSeries, Min: 2, Max: mostInSeries, Default: "one", Example: "2", Whole: true,
			Doc: "so many equal batteries in series: two of 12 V make 24 V, four 48 V. They are of one kind, capacity and age; what is said of the battery is said of each"},
			func(x *X, n float64) { of(x).InSeries = int(n) }),
		{Key: Key{Name: linkKey, Kind: KindRecord, Section: wireSection.Name, Default: "there is one battery",
			Doc: "the cable from each battery of those in series to the next: its size and length", Example: "{size: 35 mm², length: 250 mm}"},
			read: func(r *reader, x *X, f field) {
				c := r.connection(f, &of(x).Links, false)
				c.link, c.wire = true, &wireDraft{}
				c.wire.spec.Pos = r.pos(f.node)
				readRecord(r, &wireSection, c.wire, f.node, f.inside())
			}},
	}
}

// BoardA is the current that the protection of a battery lets through for good; 0 = it has none, or none is known.
func (b *Battery) BoardA() float64 {
	if b.Board.Given() || b.Chemistry == nil {
		return b.Board.Value
	}
	return b.Chemistry.BoardA(b.CapacityAh.Value)
}

// finish fills in the rate, and refuses a board on what has none, and batteries in series that make no string.
func (b *Battery) finish(r *reader, f field) {
	b.finishString(r, f)
	if b.Board.Given() && b.Chemistry != nil && b.Chemistry.HouseAh == 0 {
		r.report(b.Board.Pos, fmt.Sprintf("%s: %s has no protection that switches it off", f.where, b.Chemistry.Name), "no `board`")
	}
	if !b.RateH.Given() && b.Chemistry != nil {
		b.RateH.Value = b.Chemistry.RatedH
	}
}

func batteryKey() key[Design] {
	return recordKey(Key{Name: "battery", Required: true, Doc: "the stored source",
		Example: "see battery"}, &batterySection,
		func(r *reader, d *Design, f field) *Battery {
			r.current = nil
			d.Battery.Pos = r.pos(f.node)
			return &d.Battery
		})
}
