package page

import (
	"bytes"

	"fusewright/harness"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/layout"
	"fusewright/render/svg"
)

// Layout is the loom on the board, each sheet an SVG; none of a harness without runs.
func Layout(r *harness.Review) ([]string, error) {
	sheets, err := layout.Draw(r, formboard.Lay(r.Circuit))
	list := []string{}
	for _, s := range sheets {
		var b bytes.Buffer
		if err := svg.WriteInline(&b, s); err != nil {
			return nil, err
		}
		list = append(list, b.String())
	}
	return list, err
}
