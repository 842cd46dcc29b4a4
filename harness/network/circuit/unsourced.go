package circuit

import (
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// UnsourcedOhm is how much of a branch's resistance at 20 °C, in ohms, rests on values
// from memory, without a source, or assumed. What the design gives is sure; of a
// conductor whose row is from memory copper's own resistance is, and what the row has
// above it is not.
func (b *Branch) UnsourcedOhm() (ohm float64) {
	if b.Wire != nil {
		return b.Wire.unsourcedOhm()
	}
	for _, part := range b.OhmParts() {
		if part.Source.Unsourced() {
			ohm += part.Ohm
		}
	}
	return ohm
}

// OhmPart is a part of a branch's resistance as new, with where it is from.
type OhmPart struct {
	What   string // "fuse 7.5 A", "contacts of the way"
	Ohm    float64
	Source library.Source
	Given  problem.Pos // in the design; zero = it is not from there
	// DropV over RatedA is Ohm where the row gives that in place of a resistance.
	DropV, RatedA float64
}

// OhmParts are the parts of the resistance of a branch that is no wire; together they are
// its Ohm.
func (b *Branch) OhmParts() []OhmPart {
	whole := OhmPart{What: "resistance", Ohm: b.Ohm, Source: library.Source{Text: "taken by the program", Certainty: library.CommonPractice}}
	if b.Assumed != "" {
		whole.What = b.Assumed
		return []OhmPart{whole}
	}
	if b.Part == nil {
		whole.Source.Certainty = library.Computed
		return []OhmPart{whole}
	}
	from := func(what string, s library.Source) []OhmPart {
		whole.What, whole.Source = what, s
		return []OhmPart{whole}
	}
	given := func(what string, at problem.Pos) []OhmPart {
		whole.What, whole.Given, whole.Source = what, at, library.Source{Text: "your design", Certainty: library.UserData}
		return []OhmPart{whole}
	}
	switch x := b.Part.Source.(type) {
	case *design.Bank:
		if q := x.Store.ResistanceOhm; q.Given() {
			return given("inside the battery", q.Pos)
		}
	case *design.Ground: // given, else it is assumed
		return given("frame and strap", x.FrameOhm.Pos)
	case *design.Fuse:
		return []OhmPart{fusePart(x.Type, x.Rating, b.Ohm)}
	case *design.Block:
		return b.wayParts(x, whole)
	case *design.Relay:
		if x.Form != nil && b.IsCoil() {
			return from("coil", x.Form.Source)
		}
		if x.Form != nil {
			return from("contact of "+x.Form.Name, x.Form.Source)
		}
	case *design.DroppingResistor:
		return given("resistor", x.Ohm.Pos)
	case *design.Diode:
		return from("slope of "+x.Type.Name, x.Type.Source)
	case *design.Charger:
		return from("what it holds is its voltage", library.Source{Text: "taken by the program", Certainty: library.Computed})
	case *design.Switch:
		if x.Type != nil {
			return from("contact of "+x.Type.Name, x.Type.Source)
		}
	}
	return []OhmPart{whole} // this package's own defaults
}

// fusePart is a fuse's resistance cold.
func fusePart(t *library.FuseType, r *library.FuseRating, ohm float64) OhmPart {
	p := OhmPart{What: "fuse, cold", Ohm: ohm}
	if r == nil {
		return p
	}
	p.Source = r.Source
	if t != nil {
		p.What = t.Name + " " + quantity.Plain(r.RatingA, quantity.Current) + ", cold"
	}
	if r.ColdOhm == 0 {
		p.DropV, p.RatedA = r.DropV, r.RatingA
		p.What = strings.Replace(p.What, ", cold", ", its drop over its rating", 1)
	}
	return p
}

// wayParts is that of a block's way with what stands in it.
func (b *Branch) wayParts(bl *design.Block, whole OhmPart) []OhmPart {
	if bl.Type == nil {
		return []OhmPart{whole}
	}
	way := OhmPart{What: "contacts of the way", Ohm: math.Min(bl.Type.ContactOhm, b.Ohm), Source: bl.Type.Source}
	if b.Fuse == nil {
		way.Ohm = b.Ohm
		return []OhmPart{way}
	}
	return []OhmPart{fusePart(b.Fuse.Type, b.Fuse.Rating, b.Ohm-way.Ohm), way}
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
