package fusing_test

import (
	"fmt"

	"fusewright/harness/formula/fusing"
	"fusewright/library"
)

// A miniature blade fuse of 10 A at 60 A.
func ExampleOpenAt() {
	o := fusing.OpenAt(library.Default().FuseType("blade F"), 10, 60, 23)
	fmt.Printf("%.2f to %.2f s at %.0f times the rating\n", o.FastS, o.SlowS, o.Multiple)
	// Output: 0.03 to 0.10 s at 6 times the rating
}
