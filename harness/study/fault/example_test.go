package fault_test

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

func ExampleCompute() {
	d, err := design.Read("example.yaml", bare("resistance: 15 mΩ", "type: blade F, rating: 10 A, wire: {length: 100 mm}",
		"wire: {length: 2.5 m}, return wire: {length: 2.5 m}"), library.Default())
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := circuit.Build(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	r := fault.Compute(c).FarEnd(c.Wires[1]).Results[fault.Weak]
	fmt.Printf("%.0f A, cleared by %s within %.0f ms, %s reaches %.0f °C\n", r.CurrentA, r.Device.Name, 1000*r.SlowS,
		r.Worst.Wire.Number, r.Worst.EndC)
	// Output: 60 A, cleared by F1 within 98 ms, W2 reaches 92 °C
}
