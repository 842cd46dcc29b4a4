package design

import (
	"maps"

	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// Limits override the practice's; see library.Practice.
type Limits struct {
	DropCritical, DropOther Quantity // share
	FuseDistanceM           Quantity
	StandbyA                Quantity // most the battery may lose with the key off
	StandbyDays             Quantity // least days to no start
	SpareA                  Quantity // least the charging system has to spare, engine running
}

var limitsSection = section[Limits]{
	Section: Section{Name: "limits", Shape: KindRecord,
		Doc: "Limits of this design in place of the practice's; what is not given holds as there. A wider limit than the " +
			"practice's is the builder's to answer for. A practice for several designs goes into a library file, `like` one that is there.",
		Example: "limits: {drop critical: 2 %, fuse distance: 150 mm, days to no start: 21 days}\n"},
	keys: append([]key[Limits]{
		quantityKey(Key{Name: "drop critical", Unit: quantity.Share, Min: 0.001, Max: 0.5,
			Doc:     "most voltage drop to a critical load, feed and return, of the system voltage",
			Default: "the practice's", Example: "3 %"}, func(l *Limits) *Quantity { return &l.DropCritical }),
		quantityKey(Key{Name: "drop other", Unit: quantity.Share, Min: 0.001, Max: 0.5,
			Doc: "the same for other loads", Default: "the practice's", Example: "10 %"},
			func(l *Limits) *Quantity { return &l.DropOther }),
		quantityKey(Key{Name: "fuse distance", Unit: quantity.Length, Min: 0.001, Max: 5,
			Doc:     "most wire between a source and its fuse",
			Default: "the practice's", Example: "180 mm"}, func(l *Limits) *Quantity { return &l.FuseDistanceM }),
		quantityKey(Key{Name: "standby", Unit: quantity.Current, Min: 0, Max: 10,
			Doc: "maximum current with the key off", Example: "20 mA"},
			func(l *Limits) *Quantity { return &l.StandbyA }),
		quantityKey(Key{Name: "days to no start", Unit: quantity.Duration, Min: 3600, Max: 3650 * 86400,
			Doc: "least time parked until the battery no longer starts the engine", Example: "21 days",
			per: 86400}, func(l *Limits) *Quantity { return &l.StandbyDays }),
		quantityKey(Key{Name: "spare", Unit: quantity.Current, Min: 0, Max: 1000, Default: "none",
			Doc: "least that the charging system has to spare with the engine running", Example: "2 A"},
			func(l *Limits) *Quantity { return &l.SpareA }),
	}, practiceKeys()...),
}

// practiceKeys are limits that stand in a copy of the practice, so that nothing else has to
// know who set them.
func practiceKeys() []key[Limits] {
	share := func(name, doc string, least, most float64, example string, at func(*library.Practice) *float64, of string) key[Limits] {
		return ownLimit(Key{Name: name, Unit: quantity.Share, Min: least, Max: most, Doc: doc, Example: example}, of, at)
	}
	return []key[Limits]{
		share("drop aim", "what the wires of a load that is on for long are aimed to lose at most, held as advice", 0.001, 0.5, "3 %",
			func(p *library.Practice) *float64 { return &p.DropAim }, "drop aim"),
		share("fuse load", "most continuous load of a fuse, of its rating", 0.1, 1, "70 %",
			func(p *library.Practice) *float64 { return &p.FuseLoadShare }, "load share of fuse"),
		share("fuse over wire", "most rating of a fuse, of the current that its wire may carry", 0.1, 1, "90 %",
			func(p *library.Practice) *float64 { return &p.FuseWireShare }, "fuse share of wire"),
		ownLimit(Key{Name: "smallest wire", Unit: quantity.Area, Min: 0.05, Max: 10, Doc: "smallest conductor", Example: "1 mm²"},
			"least mm2", func(p *library.Practice) *float64 { return &p.MinMm2 }),
		ownLimit(Key{Name: "smallest flexing wire", Unit: quantity.Area, Min: 0.05, Max: 10, Doc: "the same in a run that flexes", Example: "1 mm²"},
			"least flexing mm2", func(p *library.Practice) *float64 { return &p.MinFlexMm2 }),
	}
}

// ownLimit reads a limit of the practice; of is its key in the library.
func ownLimit(k Key, of string, at func(*library.Practice) *float64) key[Limits] {
	k.Kind, k.Default = KindQuantity, "the practice's"
	return key[Limits]{Key: k, read: func(r *reader, _ *Limits, f field) {
		if q, ok := r.quantity(f, &k); ok {
			r.limits = append(r.limits, func(p *library.Practice) {
				*at(p) = q.Value
				p.Source[of] = library.Source{Text: ownLimitSource, Certainty: library.UserData}
			})
		}
	}}
}

// ownLimitSource is what is printed where a limit of the practice is the design's own.
const ownLimitSource = "limit set by the design"

// ownPractice puts the design's limits into a copy of its practice.
func (r *reader) ownPractice() {
	if r.d.Practice == nil || len(r.limits) == 0 {
		return
	}
	own := *r.d.Practice
	own.Source = maps.Clone(own.Source)
	for _, set := range r.limits {
		set(&own)
	}
	r.d.Practice = &own
}
