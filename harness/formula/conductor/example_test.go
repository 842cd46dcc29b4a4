package conductor_test

import (
	"fmt"

	"fusewright/harness/formula/conductor"
)

// Copper for 10 A over a loop of 6.4 m with at most 0.36 V of drop.
func ExampleAreaForDrop() {
	area := conductor.AreaForDrop(10, conductor.Loop{LengthM: 6.4, ConductorC: 30}, 0.36)
	fmt.Printf("%.2f mm², between %.0f and %.0f AWG\n", area,
		conductor.AWGOfArea(area)+0.5, conductor.AWGOfArea(area)-0.5)
	// Output: 3.19 mm², between 13 and 12 AWG
}
