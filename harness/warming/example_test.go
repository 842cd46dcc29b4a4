package warming_test

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/rules"
	"fusewright/harness/solve"
	"fusewright/harness/warming"
)

// A loaded wire has more resistance than at 20 °C.
func Example() {
	d, err := design.Read("example.yaml", []byte(rules.ExampleDesign("")), nil)
	if err != nil {
		panic(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		panic(err)
	}
	cold, warm := solve.All(c, solve.Options{}), warming.Solve(c)
	w := c.Wires[0].Branch.Index
	fmt.Println(warm[0].Ohm[w] > cold[0].Ohm[w])
	// Output: true
}
