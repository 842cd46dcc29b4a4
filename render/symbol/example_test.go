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
	fmt.Printf("the conductor goes on %.0f mm to the right\n", fuse.Body.Right()*symbol.M)
	// Output: the conductor goes on 10 mm to the right
}
