package png_test

import (
	"fmt"

	"fusewright/render/png"
	"fusewright/render/scene"
)

func ExampleDraw() {
	picture, err := png.Draw(scene.NewSheet(25.4, 12.7, "Blank"), 300)
	fmt.Println(picture.Bounds().Size(), err)
	// Output: (300,150) <nil>
}
