package circuit

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// UnsourcedOhm is how much of a branch's resistance at 20 °C, in ohms, rests on values
// from memory, without a source, or assumed. What the design gives is sure; of a
// conductor whose row is from memory copper's own resistance is, and what the row has
// above it is not.
func (b *Branch) UnsourcedOhm() float64 {
	switch {
	case b.Wire != nil:
		return b.Wire.unsourcedOhm()
	case b.Assumed != "":
		return b.Ohm
	case b.Part == nil:
		return 0
	}
	switch x := b.Part.Source.(type) {
	case *design.Bank:
		if x.Store.ResistanceOhm.Given() {
			return 0
		}
	case *design.Ground: // given, else it is assumed
		return 0
	case *design.Fuse:
		return unsourced(b.Ohm, ratingSource(x.Rating))
	case *design.Block:
		return b.unsourcedWay(x)
	case *design.Relay:
		if x.Form != nil {
			return unsourced(b.Ohm, x.Form.Source)
		}
	case *design.Diode:
		return unsourced(b.Ohm, x.Type.Source)
	case *design.Charger:
		return 0 // its voltage is what it holds, not its resistance
	case *design.Switch:
		if x.Type != nil {
			return unsourced(b.Ohm, x.Type.Source)
		}
	}
	return b.Ohm // this package's own defaults
}

// unsourced is the whole of a resistance whose source is none.
func unsourced(ohm float64, from library.Source) float64 {
	if from.Unsourced() {
		return ohm
	}
	return 0
}

func ratingSource(r *library.FuseRating) library.Source {
	if r == nil {
		return library.Source{}
	}
	return r.Source
}

// unsourcedWay is that of a block's way with what stands in it.
func (b *Branch) unsourcedWay(bl *design.Block) float64 {
	if bl.Type == nil {
		return b.Ohm
	}
	way := math.Min(bl.Type.ContactOhm, b.Ohm)
	if b.Fuse == nil {
		return unsourced(b.Ohm, bl.Type.Source)
	}
	return unsourced(way, bl.Type.Source) + unsourced(b.Ohm-way, ratingSource(b.Fuse.Rating))
}

func (w *Wire) unsourcedOhm() float64 {
	ohm := 0.0
	for _, end := range w.Contacts() {
		if end == nil || end.ContactUnsourced() {
			ohm += endOhm(end)
		}
	}
	if s := w.Spec.Size; s != nil && s.Source.Unsourced() && s.AreaMm2 > 0 {
		ohm += math.Max(0, w.ConductorOhm20-conductor.CopperOhmMm2PerM/s.AreaMm2*w.LengthM)
	}
	return ohm
}
