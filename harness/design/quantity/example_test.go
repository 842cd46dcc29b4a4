package quantity_test

import (
	"fmt"

	"fusewright/harness/design/quantity"
)

func ExampleParse() {
	amps, err := quantity.Parse("350 mA", quantity.Current)
	fmt.Println(amps, err)
	_, err = quantity.Parse("350", quantity.Current)
	fmt.Println(err)
	// Output:
	// 0.35 <nil>
	// 350 has no unit (expected a current in A, mA or µA, such as 2.1 A)
}

func ExampleFormat() {
	fmt.Println(quantity.Format(2.1, quantity.Current), quantity.Plain(15, quantity.Current))
	// Output: 2.10 A 15 A
}
