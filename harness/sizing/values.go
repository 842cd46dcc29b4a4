package sizing

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Value is one thing of a design that sizing could choose, whether it is left open
// or given, with what the library offers for it in ascending order.
type Value struct {
	*slot
	Now int // the choice that the design has, or the last one below it; -1 = below all
}

// Values lists them in the order of the sections. The design is as before.
func Values(d *design.Design) []*Value {
	var list []*Value
	withAllOpen(d, func(slots []*slot) {
		for _, s := range slots {
			list = append(list, &Value{s, s.nearest()})
		}
	})
	return list
}

// nearest is the candidate that the design has; of a size that no shop has, the
// last one that is thinner, of a relay for another voltage the last one that is weaker.
func (s *slot) nearest() int {
	at := s.given()
	if at < 0 && s.kind == RelayForm && s.relay.Form != nil {
		for i, f := range s.forms {
			if f.MakeA < s.relay.Form.MakeA {
				at = i
			}
		}
	}
	if at < 0 && s.kind == WireSize {
		for i, z := range s.sizes {
			if z.AreaMm2 < s.feeds[0].Wire.Size.AreaMm2 {
				at = i
			}
		}
	}
	return at
}

// Kind is what is chosen.
func (v *Value) Kind() Kind { return v.kind }

// Name is the value for people: "left lamp, return wire".
func (v *Value) Name() string { return v.part }

// Owner is the part that it is a value of; "" = of a run.
func (v *Value) Owner() string {
	if v.owner == nil {
		return ""
	}
	return v.owner.PartName()
}

// Of tells whether it is a value of a part, but of none of its wires.
func (v *Value) Of(name string) bool {
	return v.kind == RunCover && v.part == name || v.kind != RunCover && v.kind != WireSize && v.owner.PartName() == name
}

// Sets tells whether it is the size of a wire.
func (v *Value) Sets(x *circuit.Wire) bool { return v.kind == WireSize && v.home() == homeOf(x) }

// IsWireOf tells whether it is the size of the feed or the return of a part, coils left out.
func (v *Value) IsWireOf(name string) bool {
	return v.kind == WireSize && v.owner.PartName() == name && (v.role == circuit.FeedWire || v.role == circuit.ReturnWire)
}

// SameSize tells whether two wires have one size of one type.
func (v *Value) SameSize(o *Value) bool {
	a, b := v.feeds[0].Wire, o.feeds[0].Wire
	return a.Type == b.Type && a.Size == b.Size
}

// Open tells whether it is the size of a wire that the design leaves open.
func (v *Value) Open() bool { return v.kind == WireSize && v.feeds[0].Wire.SizeAuto }

// Least is the thinnest choice of a wire with so much copper; -1 = none has it.
func (v *Value) Least(areaMm2 float64) int {
	return slices.IndexFunc(v.sizes, func(z *library.WireSize) bool { return z.AreaMm2 >= areaMm2 })
}

// Index is the choice of a label; -1 = there is none.
func (v *Value) Index(label string) int {
	for i := range v.Count() {
		if v.label(i) == label {
			return i
		}
	}
	return -1
}

// Protects tells whether it is the rating of a fuse.
func (v *Value) Protects(b *circuit.Branch) bool {
	return v.kind == Fuse && b.Part != nil && b.Part.Source == v.owner && b == fuseBranch(b.Part, v.way)
}

// Count is how many choices there are.
func (v *Value) Count() int { return v.count() }

// Label is a choice as the file writes it.
func (v *Value) Label(i int) string { return v.label(i) }

// Given is what the design has, as the file writes it; "" when it gives figures alone.
func (v *Value) Given() string {
	if v.kind == WireSize {
		return v.feeds[0].Wire.Size.Label
	}
	return v.now()
}

// SameType tells whether a choice differs by its rating alone: of fuses, that it is
// of the type that the design has.
func (v *Value) SameType(i int) bool {
	return v.kind != Fuse || v.Now < 0 || v.fuses[i].kind == v.fuses[v.Now].kind
}

// MostStronger is how many times as strong a relay or switch may be and still be one for
// the place (our choice).
const MostStronger = 4

// Alike tells whether a fitter would put a choice where the present one is: a relay that is
// not for many times the current, a size for which the ends that the design asks for exist.
func (v *Value) Alike(i int) bool {
	switch v.kind {
	case RelayForm:
		return v.relay.Form == nil || v.forms[i].MakeA <= MostStronger*v.relay.Form.MakeA
	case WireSize:
		return !slices.ContainsFunc(v.feeds, func(f design.Feed) bool {
			return !v.hasEnd(f.Wire.FromKind, i) || !v.hasEnd(f.Wire.ToKind, i)
		})
	}
	return true
}

// TakeType puts a wire type into the design in place of the one that it has, in the sizes
// that it gives; back takes it out again. nil = the type has not all of them.
func (v *Value) TakeType(t *library.WireType) (back func()) {
	var u undo
	for k := range v.feeds {
		w := &v.feeds[k].Wire
		at := slices.IndexFunc(t.Sizes, func(s *library.WireSize) bool { return s.Label == w.Size.Label })
		if at < 0 {
			u.all()
			return nil
		}
		keep(&u, w)
		w.Type, w.Size = t, t.Sizes[at]
	}
	return u.all
}

func (v *Value) hasEnd(kind string, i int) bool {
	return kind == "" || v.lib.TerminalFor(kind, v.sizes[i].AreaMm2) != nil
}

// Setting is where a choice stands in the file, and what is written there.
func (v *Value) Setting(i int) (path []string, s Setting) {
	s = Setting{keys[v.kind], v.label(i)}
	switch _, parts := v.owner.(*design.Connector); {
	case parts:
		s.Key = "family"
	case v.kind == Fuse:
		s = Setting{"rating", quantity.Plain(v.fuses[i].rating.RatingA, quantity.Current)}
		if v.way != nil {
			s.Key = "fuse"
		}
	}
	return v.path, s
}

// Take puts a choice into the design; back takes it out again.
func (v *Value) Take(i int) (back func()) {
	var u undo
	switch v.kind {
	case WireSize:
		for k := range v.feeds {
			keep(&u, &v.feeds[k].Wire)
		}
	case Fuse:
		if v.way != nil {
			keep(&u, v.way)
		} else {
			keep(&u, v.fuse)
		}
	case RelayForm:
		keep(&u, v.relay)
	case BlockType:
		keep(&u, v.block)
		v.block.WayA, v.block.TotalA = design.Quantity{}, design.Quantity{}
	case RunCover:
		keep(&u, v.run)
	case Plug:
		keep(&u, v.plug)
	}
	v.set(i)
	return u.all
}
