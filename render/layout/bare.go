package layout

import (
	"fmt"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// Bare draws each section of the board as Draw does, for a screen: without frame, legend and
// tables, and no larger than it is. The title of a sheet says its scale. The error is Draw's.
func Bare(r *harness.Review, b *formboard.Board) ([]*scene.Sheet, error) {
	const edge = 2.0 // mm round the picture
	paper, err := frame.PaperOf(r.Design.Sheet.Size)
	if err != nil {
		return nil, fmt.Errorf("layout: %w", err)
	}
	d := &drawing{review: r, board: b, paper: paper, unit: lengths.Of(r.Design)}
	var sheets []*scene.Sheet
	for _, section := range b.Sections {
		p, err := d.fit(section)
		if err != nil {
			return nil, err
		}
		size := p.sheet.Bounds()
		title := "Layout, scale " + p.name
		if len(b.Sections) > 1 {
			title = fmt.Sprintf("Layout, section %d, scale %s", section.Number, p.name)
		}
		s := scene.NewSheet(size.W+2*edge, size.H+2*edge, title)
		p.place(s, scene.Rect{X: edge, Y: edge, W: size.W, H: size.H})
		sheets = append(sheets, s)
	}
	return sheets, nil
}
