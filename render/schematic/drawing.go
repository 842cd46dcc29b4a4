package schematic

import (
	"cmp"
	"fmt"
	"fusewright/harness"
	"fusewright/render/scene"
	"slices"
)

// drawing is a set of sheets laid out and ready to be drawn.
type drawing struct {
	*sheets
	lists    *lists
	findings string // their counts, for the title block
}

func newDrawing(s *sheets, review *harness.Review) *drawing {
	return &drawing{s, composeLists(s.arrangement, s), findingWords(review.Findings)}
}

// paint draws all sheets that are not left out, in order.
func (d *drawing) paint() []*scene.Sheet {
	var out []*scene.Sheet
	total := cmp.Or(d.total, len(d.pages)+len(d.lists.extras))
	for i, list := range slices.Concat(d.lists.beside, d.lists.extras) {
		number := d.number(i)
		if number == 0 {
			continue
		}
		what := d.subject()
		if i >= len(d.pages) {
			what = "lists to the " + what
		}
		sheet := scene.NewSheet(d.paper.W, d.paper.H, fmt.Sprintf("%s, sheet %d of %d", what, number, total))
		sheet.ID = d.sheetID(number)
		d.paintFrame(sheet, number, total)
		if i < len(d.pages) {
			newPainter(d.sheets, d.pages[i], sheet).page()
		}
		for _, p := range list {
			p.paint(sheet)
		}
		out = append(out, sheet)
	}
	return out
}

// subject is what the sheets show.
func (d *drawing) subject() string {
	switch {
	case d.signs.asWas:
		return "as it was"
	case d.signs.changes != nil:
		return "changes"
	}
	return "schematic"
}

// follow puts the pages of the earlier design that bear a mark after these, and
// leaves the others out.
func (d *drawing) follow(was *drawing) {
	d.earlier = was.sheets
	number := len(d.pages) + len(d.lists.extras)
	for i := range len(was.pages) + len(was.lists.extras) {
		if i < len(was.pages) && !was.lists.bears(was.pages[i]) {
			was.numbers = append(was.numbers, 0)
			continue
		}
		number++
		was.numbers = append(was.numbers, number)
	}
	d.total, was.total = number, number
}
