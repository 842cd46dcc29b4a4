package page

import (
	"bytes"

	"fusewright/harness"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/layout"
	"fusewright/render/svg"
)

// LayoutSheet is a section of the loom on the board.
type LayoutSheet struct {
	Title string `json:"title"`
	SVG   string `json:"svg"`
}

// Layout is the loom on the board; empty of a harness without runs.
func Layout(r *harness.Review) ([]LayoutSheet, error) {
	sheets, err := layout.Bare(r, formboard.Lay(r.Circuit))
	list := []LayoutSheet{}
	for _, s := range sheets {
		var b bytes.Buffer
		if err := svg.WriteInline(&b, s); err != nil {
			return nil, err
		}
		list = append(list, LayoutSheet{s.Title, b.String()})
	}
	return list, err
}
