package page

import (
	"bytes"

	"fusewright/harness"
	"fusewright/render/schematic"
	"fusewright/render/svg"
)

// Drawing is the schematic as one picture.
func Drawing(r *harness.Review) ([]byte, error) {
	sheets, err := schematic.Draw(r, schematic.Options{Size: "A3"})
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := svg.Write(&b, sheets[0]); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
