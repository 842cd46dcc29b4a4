package compare_test

import (
	"fmt"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/review/compare"
	"fusewright/library"
)

func assess(text string) *harness.Review {
	d, err := design.Read("lamp.yaml", []byte(text), library.Default())
	if err != nil {
		panic(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		panic(err)
	}
	return r
}

// A larger fuse is named with what it was, and the danger that came with it.
func ExampleReviews() {
	c := compare.Reviews(assess(lamp), assess(strings.Replace(lamp, "rating: 5 A", "rating: 30 A", 1)))
	for _, f := range c.Fuses {
		fmt.Println(f.Name, f.Text(lengths.Unit{}))
	}
	fmt.Println(c.NewFindings()[0].Rule)
	// Output:
	// lamp fuse rating 5 A → 30 A
	// fuse-over-wire
}
