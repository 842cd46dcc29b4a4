package schematic_test

import (
	"fmt"
	"os"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
	"fusewright/render/schematic"
)

// A design becomes sheets by way of its circuit.
func ExampleDraw() {
	text, err := os.ReadFile("../../designs/fen-runner.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := design.Read("fen-runner.yaml", text, library.Default())
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := circuit.Build(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	sheets, err := schematic.Draw(&harness.Review{Design: d, Circuit: c}, schematic.Options{Size: "A3"})
	fmt.Println(len(sheets), "sheet,", sheets[0].WidthMM, "mm wide,", err)
	// Output: 1 sheet, 420 mm wide, <nil>
}
