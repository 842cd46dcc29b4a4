package protection

import (
	"fusewright/harness/formula/conductor"
	"fusewright/harness/formula/fusing"
	"fusewright/library"
)

// kind is what the curves of a device hang on. Comparisons are kept by kind and
// current (conductor.Rater.Kept): designs that are judged one after another
// differ in a few wires and fuses, and the rest compares as before.
type kind struct {
	device   *library.FuseType
	rating   *library.FuseRating
	ambientC float64
}

func kindOf(d fusing.Device) kind { return kind{d.Type, d.Rating, d.AmbientC} }

// wireKey is a device against a wire, pairKey a device under another.
type (
	wireKey struct {
		device  kind
		damage  *conductor.Damage
		faultA  float64
		abreast int
	}
	pairKey struct {
		down, up kind
		faultA   float64
	}
)
