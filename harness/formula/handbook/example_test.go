package handbook_test

import (
	"fmt"

	"fusewright/harness/formula/handbook"
)

// A pair of heaters of 276 W on a nominal 12 V.
func ExamplePower() {
	answer, err := handbook.Power(handbook.PowerInput{PowerW: 276, Volts: 12})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(answer.Text())
	// Output:
	// Watts and amperes
	//
	// Given
	//   voltage  12 V
	//   power    276 W
	//
	// Working
	//   I = P / U
	//     I = 276 W / 12 V = 23 A
	//
	// Result
	//   current                   23.0 A
	//   resistance at that point  522 mΩ
	//
	// Source
	//   Joule's law
	//
	// An estimate for planning. Local codes, the makers' instructions and licensed practice come first.
}
