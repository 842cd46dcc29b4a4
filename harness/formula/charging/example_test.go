package charging_test

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
)

// A curve of three points: between them, above them, and back from a current to
// the engine speed that gives it.
func ExampleCurve() {
	c := charging.Of(&design.Charging{Output: points(1000, 12, 2500, 26, 5000, 33)})
	fmt.Printf("%.1f A at 1800 rpm\n", c.Amps(1800))
	fmt.Printf("%.1f A at 8000 rpm\n", c.Amps(8000))
	fmt.Printf("nothing below %.0f rpm\n", c.CutIn())
	fmt.Printf("20 A from %.0f rpm\n", c.Speed(20, 0))
	// Output:
	// 19.5 A at 1800 rpm
	// 33.0 A at 8000 rpm
	// nothing below 903 rpm
	// 20 A from 1857 rpm
}
