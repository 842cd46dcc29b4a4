package symbol_test

import (
	"fmt"

	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// A fuse drawn with its first pin 20 mm from the corner of a sheet.
func ExampleNewPen() {
	sheet := scene.NewSheet(100, 50, "a fuse")
	fuse := symbol.IEC().Symbol(symbol.Fuse)
	fuse.Draw(symbol.NewPen(sheet, scene.Point{X: 20, Y: 20}), "")
	out := fuse.Pin("out").At
	fmt.Printf("the other pin is %.0f mm to the right\n", out.X*symbol.M)
	// Output: the other pin is 10 mm to the right
}
