package design

import (
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/library"

	"gopkg.in/yaml.v3"
)

// Run is a stretch of loom between two places.
type Run struct {
	Name     string // "battery tray - under seat" when not given
	From, To *Place
	LengthM  Quantity
	AmbientC Quantity // of what it passes near, when given
	Near     Text     // what it passes near
	Flexes   bool
	Chafes   bool // abrasion risk
	Pinches  bool // pinch risk
	Cover    *library.Cover
	// CoverAuto tells that the cover is left to package sizing.
	CoverAuto bool
	Pos       problem.Pos
}

var runSection = section[Run]{
	Section: Section{Name: "run", Shape: KindList,
		Doc: "A stretch of loom between two places. A wire takes the shortest way through the runs " +
			"between its two ends, and wires in one run share a bundle.",
		Example: "runs:\n  - {from: battery tray, to: under seat, length: 260 mm, cover: braided sleeve}\n" +
			"  - {from: under seat, to: handlebar, length: 3 ft, flexes: yes,\n" +
			"     near: {what: exhaust, ambient: 75 °C}, cover: heat sleeve}\n"},
	keys: []key[Run]{
		textKey[Run](Key{Name: "name", Doc: "its name", Default: "both places", Example: "main spine"}, nil).
			labelled(func(x *Run, s string) { x.Name = s }),
		placeKey(Key{Name: "from", Required: true, Doc: "the place at one end", Example: "battery tray"},
			func(x *Run) **Place { return &x.From }),
		placeKey(Key{Name: "to", Required: true, Doc: "the place at the other end", Example: "under seat"},
			func(x *Run) **Place { return &x.To }),
		quantityKey(Key{Name: "length", Unit: quantity.Length, Min: 1e-3, Max: 200, Required: true,
			Doc: "length along the loom"}, func(x *Run) *Quantity { return &x.LengthM }),
		recordKey(Key{Name: "near", Doc: "something hot that it passes",
			Example: "{what: exhaust, ambient: 75 °C}"}, &nearSection,
			func(_ *reader, x *Run, _ field) *Run { return x }),
		yesKey(Key{Name: "flexes", Default: "no", Doc: "it bends in use", Example: "yes"},
			func(x *Run) *bool { return &x.Flexes }),
		yesKey(Key{Name: "chafes", Default: "no", Doc: "it may rub on something", Example: "yes"},
			func(x *Run) *bool { return &x.Chafes }),
		yesKey(Key{Name: "pinches", Default: "no", Doc: "it may be pinched", Example: "yes"},
			func(x *Run) *bool { return &x.Pinches }),
		orNone(orAuto(libraryKey(Key{Name: "cover", Library: "covers", Default: "`none`", Example: "braided sleeve",
			Doc: "sleeve or conduit over it; `none` leaves it bare; `auto` is one that the run needs, chosen by sizing"},
			(*library.Library).Cover, func(x *Run) **library.Cover { return &x.Cover }),
			func(x *Run) { x.CoverAuto = true })),
	},
}

var nearSection = section[Run]{
	Section: Section{Name: "near", Shape: KindRecord, Doc: "What a run passes near.",
		Short:   "a word for it",
		Example: "near: {what: exhaust, ambient: 75 °C}\n"},
	keys: []key[Run]{
		textKey(Key{Name: "what", Required: true, Doc: "what it is", Example: "exhaust"},
			func(x *Run) *Text { return &x.Near }),
		quantityKey(Key{Name: "ambient", Unit: quantity.Temperature, Min: minAmbientC, Max: maxAmbientC,
			Doc: "air temperature there in use", Example: "75 °C"},
			func(x *Run) *Quantity { return &x.AmbientC }),
	},
	short: func(r *reader, x *Run, f field) bool {
		if isNothing(f.node) {
			return false
		}
		x.Near, _ = r.sentence(f, maxName)
		return true
	},
}

func addRun(r *reader, d *Design, n *yaml.Node) *Run {
	r.current = nil
	x := &Run{Pos: r.pos(n)}
	d.Runs = append(d.Runs, x)
	return x
}
