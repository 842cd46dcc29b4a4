package document

import (
	"slices"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/protection"
	"fusewright/library"
)

// Of fuses with a harmless margin a few are pictured; every other one is, the least
// margin first, alike ones once.
func TestPicturedFuses(t *testing.T) {
	size, other := &library.WireSize{}, &library.WireSize{}
	fuse := func(ref string, ratingA, ratio float64, size *library.WireSize) *protection.Fuse {
		return &protection.Fuse{Branch: &circuit.Branch{Fuse: &circuit.FuseSpec{Ref: ref}},
			Device: fusing.Device{Rating: ratings[ratingA]},
			Wires: []protection.Wire{{Wire: &circuit.Wire{Spec: design.WireSpec{Size: size}},
				Protection: fusing.Protection{FromA: 1, ToA: 2, Ratio: ratio}}}}
	}
	list, left := pictured([]*protection.Fuse{
		fuse("F1", 5, 30, size), fuse("F2", 5, 9, other), fuse("F3", 10, 10, size), fuse("F4", 10, 9.9, size),
		fuse("F5", 20, 12, size), fuse("F6", 20, 0.5, other), fuse("F7", 5, 31, size),
	})
	var got []string
	for _, alike := range list {
		refs := ""
		for _, f := range alike {
			refs += f.Branch.Fuse.Ref
		}
		got = append(got, refs)
	}
	if want := []string{"F6", "F2", "F4F3", "F5"}; !slices.Equal(got, want) || left != 2 {
		t.Errorf("pictures of %q and %d left, want %q and 2", got, left, want)
	}
}

var ratings = map[float64]*library.FuseRating{5: {RatingA: 5}, 10: {RatingA: 10}, 20: {RatingA: 20}}
