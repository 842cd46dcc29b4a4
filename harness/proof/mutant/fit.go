package mutant

import (
	"cmp"
	"math"
	"slices"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"

	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// settle makes sizes and ratings such as their types have: a change of a type
// alone would only be refused.
func (s *subject) settle() {
	for _, x := range s.slots() {
		if x.key.Kind != design.KindQuantity || x.value.Kind != yaml.ScalarNode {
			continue
		}
		switch {
		case x.key.Unit == quantity.Area:
			s.settleSize(x)
		case (x.section == "fuse" || x.section == "way") && x.key.Unit == quantity.Current:
			s.settleRating(x)
		}
	}
}

// settleSize takes the size next to what stands there.
func (s *subject) settleSize(x slot) {
	t := s.wireType(x)
	want, err := quantity.Parse(x.value.Value, quantity.Area)
	if t == nil || err != nil || t.Size(x.value.Value) != nil {
		return
	}
	setText(x.value, nearest(t.Sizes, want, func(size *library.WireSize) float64 { return size.AreaMm2 }).Label)
}

// nearest is the row whose value is next to what is wanted, of equals the first.
func nearest[T any](list []*T, want float64, of func(*T) float64) *T {
	return slices.MinFunc(list, func(a, b *T) int { return cmp.Compare(math.Abs(of(a)-want), math.Abs(of(b)-want)) })
}

func (s *subject) newSize(x slot) *yaml.Node {
	if t := s.wireType(x); t != nil {
		return word(pick(s, t.Sizes).Label)
	}
	return nil
}

// wireType is the type of the wire that a size stands in; nil = not known.
func (s *subject) wireType(x slot) *library.WireType {
	name := text(x.record, "insulation")
	if name == "" {
		name = text(value(s.root, "wire"), "insulation")
	}
	if name != "" {
		return s.lib.WireType(name)
	}
	for _, t := range s.lib.WireTypes { // by practice: the first that has the size
		if t.Size(x.value.Value) != nil {
			return t
		}
	}
	return nil
}

func (s *subject) settleRating(x slot) {
	t := s.fuseType(x)
	want, err := quantity.Parse(x.value.Value, quantity.Current)
	if t == nil || err != nil || len(t.Ratings) == 0 {
		return
	}
	best := nearest(t.Ratings, want, func(r *library.FuseRating) float64 { return r.RatingA })
	setText(x.value, quantity.Plain(best.RatingA, quantity.Current))
}

func (s *subject) newRating(x slot) *yaml.Node {
	t := s.fuseType(x)
	if t == nil || len(t.Ratings) == 0 {
		return nil
	}
	return word(quantity.Plain(pick(s, t.Ratings).RatingA, quantity.Current))
}

// fuseType is the type of a fuse or of a way's fuse; nil = not known.
func (s *subject) fuseType(x slot) *library.FuseType {
	name := text(x.record, "type")
	if x.section == "way" && name == "" {
		if b := s.lib.Block(text(s.partNamed(x.owner), "type")); b != nil {
			name = b.FuseType
		}
	}
	if name == "" {
		name = "blade C"
	}
	return s.lib.FuseType(name)
}
