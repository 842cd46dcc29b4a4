package design

import (
	"fusewright/harness/design/quantity"
	"fusewright/library"
)

var switchSection = section[Switch]{
	Section: Section{Name: "switch", Shape: KindNamed,
		Doc: "A contact worked by hand. It is closed in a situation when a load that is on is fed through it, or " +
			"when the situation says so. One of a type that is a key is closed with the key on and open with it off, unless it `stays live`.",
		Example: "switches:\n  lamps: {rating: 10 A, at: handlebar, fed by: rear 1, wire: {colour: YE}}\n"},
	keys: withCommon(append([]key[Switch]{
		libraryKey(Key{Name: "type", Library: "switches", Doc: "switch of the library",
			Example: "sealed rocker 20 A"},
			(*library.Library).Switch, func(x *Switch) **library.SwitchType { return &x.Type }),
		quantityKey(Key{Name: "rating", Unit: quantity.Current, Min: 0.01, Max: 2000,
			Doc: "maximum current, when it is not of the library", Example: "10 A"},
			func(x *Switch) *Quantity { return &x.RatingA }),
		plugKey[Switch](),
		yesKey(Key{Name: "momentary", Default: "no", Doc: "closed only while it is held", Example: "yes"},
			func(x *Switch) *bool { return &x.Momentary }),
	}, eitherKeys(func(x *Switch) *[]Feed { return &x.FedBy }, func(x *Switch) *[]Feed { return &x.Returns })...)...),
	finish: func(r *reader, _ *Switch, f field) { r.oneSide(f) },
}
