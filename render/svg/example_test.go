package svg_test

import (
	"fmt"
	"os"

	"fusewright/render/scene"
	"fusewright/render/svg"
)

func ExampleWrite() {
	sheet := scene.NewSheet(20, 10, "A line")
	sheet.Line(scene.Point{X: 2, Y: 5}, scene.Point{X: 18, Y: 5}, scene.Pen(0.5))
	if err := svg.Write(os.Stdout, sheet); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <?xml version="1.0" encoding="UTF-8"?>
	// <svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="10mm" viewBox="0 0 20 10" role="img" font-family="Liberation Sans, Arial, Helvetica, sans-serif" style="font-kerning:none;white-space:pre" fill="none" stroke-miterlimit="10" xml:space="preserve">
	// <title>A line</title>
	// <rect width="20" height="10" fill="#ffffff"/>
	// <path d="M2 5L18 5" stroke="#111111" stroke-width="0.5"/>
	// </svg>
}
