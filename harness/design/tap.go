package design

import "fusewright/harness/design/quantity"

// Tap is a point of the factory loom used as a trigger or a feed.
type Tap struct {
	Common
	Hot             When
	FuseA           Quantity // the factory fuse before it
	SpareA          Quantity // what may be drawn from it
	Supervised      bool     // watched by a data-bus module
	SupervisedGiven bool     // false = the design does not say
}

var tapSection = section[Tap]{
	Section: Section{Name: "tap", Shape: KindNamed,
		Doc: "A point of the factory wiring that the harness uses, as a trigger or as a feed.",
		Example: "taps:\n  tail lamp feed: {at: under seat, hot: key, fuse: 10 A, spare: 300 mA, " +
			"supervised: no}\n"},
	keys: withCommon(
		conditionKey(Key{Name: "hot", Required: true, Example: "main beam",
			Doc: "live with the engine running, with the key on, always, or only in the situations that name a condition `with`, " +
				"such as main beam, brake or horn"},
			func(t *Tap) *When { return &t.Hot }),
		quantityKey(Key{Name: "fuse", Unit: quantity.Current, Min: 0.1, Max: 1000,
			Doc: "the factory fuse before it; without it a finding asks for it", Example: "10 A"},
			func(t *Tap) *Quantity { return &t.FuseA }),
		quantityKey(Key{Name: "spare", Unit: quantity.Current, Min: 0, Max: 1000,
			Doc: "what it can spare on top of the factory's own loads", Example: "300 mA"},
			func(t *Tap) *Quantity { return &t.SpareA }),
		supervisedKey(),
	),
}

// supervisedKey keeps "no" apart from "not said": a review must ask.
func supervisedKey() key[Tap] {
	return saidKey(yesKey(Key{Name: "supervised", Example: "no",
		Doc: "watched by a data-bus module, which may report the added load as a fault; " +
			"not given is said in the findings"},
		func(t *Tap) *bool { return &t.Supervised }), func(t *Tap) { t.SupervisedGiven = true })
}
