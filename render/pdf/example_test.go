package pdf_test

import (
	"bytes"
	"fmt"

	"fusewright/render/pdf"
	"fusewright/render/scene"
)

func ExampleWrite() {
	document := &scene.Document{
		Title:  "Two sheets",
		Sheets: []*scene.Sheet{scene.NewSheet(297, 210, "Schematic"), scene.NewSheet(210, 297, "Cut list")},
	}
	var file bytes.Buffer
	fmt.Println(pdf.Write(&file, document), file.String()[:4])
	// Output: <nil> %PDF
}
