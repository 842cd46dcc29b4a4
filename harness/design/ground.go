package design

import "fusewright/harness/design/quantity"

// GroundKind says what a ground point is.
type GroundKind string

// The kinds of ground points.
const (
	FrameStud   GroundKind = "frame stud"   // bolted to the frame, current goes through metal
	GroundBlock GroundKind = "ground block" // a bus bar, wired on
)

// Ground is a point where returns meet.
type Ground struct {
	Common
	Kind     GroundKind
	LimitA   Quantity
	FrameOhm Quantity // frame stud: through the frame to battery negative
	Returns  []Feed   // ground block: the wire onwards
	// Supervised says that a data-bus module measures through this return.
	Supervised bool
}

var groundSection = section[Ground]{
	Section: Section{Name: "ground", Shape: KindNamed,
		Doc: "A point where returns meet: a stud on the frame, from which the current goes back through " +
			"metal, or a block, from which a wire goes on.",
		Example: "grounds:\n  frame stud: {at: under seat, limit: 30 A}\n" +
			"  helm bus: {kind: ground block, at: helm, returns to: battery negative, wire: {size: 6 mm²}}\n"},
	keys: withCommon(append([]key[Ground]{
		choiceKey(Key{Name: "kind", Choices: []string{string(FrameStud), string(GroundBlock)},
			Default: "ground block when it returns by a wire, else frame stud",
			Doc:     "what it is", Example: string(FrameStud)},
			func(x *Ground) *GroundKind { return &x.Kind }),
		quantityKey(Key{Name: "limit", Unit: quantity.Current, Min: 0.1, Max: 2000,
			Doc: "maximum current", Example: "30 A"}, func(x *Ground) *Quantity { return &x.LimitA }),
		quantityKey(Key{Name: "frame resistance", Unit: quantity.Resistance, Min: 0, Max: 10,
			Default: "5 mΩ; none of a stud with a strap at a place that moves",
			Doc:     "of a frame stud: through the frame to the battery's negative post", Example: "2 mΩ"},
			func(x *Ground) *Quantity { return &x.FrameOhm }),
		yesKey(Key{Name: "supervised", Default: "no", Example: "yes",
			Doc: "a return of the factory wiring through which a data-bus module measures"},
			func(x *Ground) *bool { return &x.Supervised }),
	}, connectionKeysOnward()...)...),
	finish: func(_ *reader, x *Ground, f field) {
		switch {
		case x.Kind != "":
		case f.has["returns to"]:
			x.Kind = GroundBlock
		default:
			x.Kind = FrameStud
		}
	},
}

// OnStrapAlone tells whether a stud's current can be counted on to go back by its strap
// alone: it sits on what moves against the frame, and no resistance of the way through the
// bearing or hinge is given.
func (x *Ground) OnStrapAlone() bool {
	return x.Kind == FrameStud && len(x.Returns) > 0 && x.At != nil && x.At.Moves && !x.FrameOhm.Given()
}

// connectionKeysOnward are `returns to` and its wire, which of a ground is
// simply called `wire`, as it has no other.
func connectionKeysOnward() []key[Ground] {
	return connectionKeys("returns to", "wire", true, func(x *Ground) *[]Feed { return &x.Returns })
}
