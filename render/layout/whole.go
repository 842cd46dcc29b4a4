package layout

import (
	"fmt"
	"slices"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/scene"
)

// Whole draws each section of the board at full size on one sheet as large as
// it needs, for cutters and drawing programs that know no paper; a broken board
// says which runs are drawn shortened.
func Whole(r *harness.Review, b *formboard.Board) []*scene.Sheet {
	const edge, words = 10.0, 12.0 // mm round the picture; for the words below
	var sheets []*scene.Sheet
	for _, section := range b.Sections {
		p := newPicture(section, lengths.Of(r.Design), 1, wireLists)
		p.full, p.anyhow = true, true
		p.window = scene.Rect{X: -1e5, Y: -1e5, W: 2e5, H: 2e5} // nothing is cut off
		p.draw()
		size := p.sheet.Bounds()
		wide := max(size.W, 150) + 2*edge
		s := scene.NewSheet(wide, size.H+2*edge+words, fmt.Sprintf("Board, section %d", section.Number))
		bottom := p.place(s, scene.Rect{X: edge, Y: edge, W: wide - 2*edge, H: size.H})
		s.Begin(scene.Group{Class: "words"})
		s.TextAt(scene.Point{X: edge, Y: bottom + 5}, scene.Ellipsis(r.Design.Title.Value, 3, wide-2*edge, scene.Bold),
			scene.TextStyle{SizeMM: 3, Face: scene.Bold})
		s.Paragraph(scene.Rect{X: edge, Y: bottom + 7, W: wide - 2*edge}, fullSize(section)+r.Design.Caution(),
			scene.TextStyle{SizeMM: 2})
		s.End()
		sheets = append(sheets, s)
	}
	return sheets
}

// fullSize is the scale of a section in words.
func fullSize(s *formboard.Section) string {
	if slices.ContainsFunc(s.Limbs, (*formboard.Limb).Broken) {
		return "Full size, 1:1, but for runs with break lines: these are drawn shortened, and their true length stands across the break. "
	}
	return "Full size, 1:1. "
}
