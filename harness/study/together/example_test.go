package together_test

import (
	"fmt"
	"strings"

	"fusewright/harness/study/together"
)

// Four accessories and 9 A to share.
func ExampleMaximalSets() {
	names := []string{"lamps", "map", "grips", "vest"}
	sets, _ := together.MaximalSets([]float64{4, 1, 3, 5}, 9, together.MostSets)
	for _, s := range sets {
		var run []string
		for i, name := range names {
			if s.Has(i) {
				run = append(run, name)
			}
		}
		fmt.Println(strings.Join(run, ", "))
	}
	// Output:
	// lamps, map, grips
	// lamps, vest
	// map, grips, vest
}
