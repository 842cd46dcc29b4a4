// Package paint draws what is arranged and lettered: one file for each kind of
// thing on a sheet.
package paint

import (
	"cmp"
	"fmt"
	"fusewright/harness"
	"fusewright/harness/review/finding"
	"fusewright/render/scene"
	"fusewright/render/schematic/crossref"
	"fusewright/render/schematic/legend"
	"slices"
)

// Drawing is a set of sheets laid out and ready to be drawn.
type Drawing struct {
	*crossref.Sheets
	Lists    *legend.Lists
	findings []*finding.Finding // counted in the title block, drawn or not
}

func New(s *crossref.Sheets, review *harness.Review) *Drawing {
	return &Drawing{s, legend.Compose(s.Arrangement, s), review.Findings}
}

// Paint draws all sheets that are not left out, in order.
func (d *Drawing) Paint() []*scene.Sheet {
	var out []*scene.Sheet
	total := cmp.Or(d.Total, len(d.Pages)+len(d.Lists.Extras))
	for i, list := range slices.Concat(d.Lists.Beside, d.Lists.Extras) {
		number := d.Number(i)
		if number == 0 {
			continue
		}
		what := d.subject()
		if i >= len(d.Pages) {
			what = "lists to the " + what
		}
		sheet := scene.NewSheet(d.Paper.W, d.Paper.H, fmt.Sprintf("%s, sheet %d of %d", what, number, total))
		sheet.ID = d.ID(number)
		d.paintFrame(sheet, number, total)
		if i < len(d.Pages) {
			newPainter(d.Sheets, d.Pages[i], sheet).page()
		}
		for _, p := range list {
			p.Paint(sheet)
		}
		out = append(out, sheet)
	}
	return out
}

// subject is what the sheets show.
func (d *Drawing) subject() string {
	switch {
	case d.Signs.AsWas:
		return "as it was"
	case d.Signs.Changes != nil:
		return "changes"
	}
	return "schematic"
}

// Follow puts the pages of the earlier design that bear a mark after these, and
// leaves the others out.
func (d *Drawing) Follow(was *Drawing) {
	d.Earlier = was.Sheets
	number := len(d.Pages) + len(d.Lists.Extras)
	for i := range len(was.Pages) + len(was.Lists.Extras) {
		if i < len(was.Pages) && !was.Lists.Bears(was.Pages[i]) {
			was.Numbers = append(was.Numbers, 0)
			continue
		}
		number++
		was.Numbers = append(was.Numbers, number)
	}
	d.Total, was.Total = number, number
}
