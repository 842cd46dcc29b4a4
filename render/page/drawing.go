package page

import (
	"bytes"

	"fusewright/harness"
	"fusewright/render/schematic"
	"fusewright/render/svg"
)

// Drawing is the schematic as one picture.
func Drawing(r *harness.Review) ([]byte, error) {
	sheet, err := schematic.Long(r)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := svg.WriteInline(&b, sheet); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
