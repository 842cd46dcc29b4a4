// Package paint draws what is arranged and lettered: one file for each kind of
// thing on a sheet.
package paint

import (
	"fmt"
	"slices"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
	"fusewright/render/frame"
	"fusewright/render/scene"
	"fusewright/render/schematic/crossref"
	"fusewright/render/schematic/legend"
)

// Drawing is a set of sheets laid out and ready to be drawn.
type Drawing struct {
	*crossref.Sheets
	Lists    *legend.Lists
	findings []*finding.Finding // counted in the title block, drawn or not
}

// New makes the lists of laid-out sheets, so that all is ready to be drawn.
func New(s *crossref.Sheets, review *harness.Review) *Drawing {
	return &Drawing{s, legend.Compose(s.Arrangement, s), review.Findings}
}

// Count is the number of sheets.
func (d *Drawing) Count() int { return len(d.Pages) + len(d.Lists.Extras) }

// Paint draws all sheets in order.
func (d *Drawing) Paint() []*scene.Sheet {
	var out []*scene.Sheet
	for i, list := range slices.Concat(d.Lists.Beside, d.Lists.Extras) {
		number, what := i+1, d.subject()
		if i >= len(d.Pages) {
			what = "lists to the " + what
		}
		sheet := scene.NewSheet(d.Paper.W, d.Paper.H, fmt.Sprintf("%s, sheet %d of %d", what, number, d.Count()))
		sheet.ID = d.ID(number)
		d.paintFrame(sheet, number, d.Count())
		d.Marks.Begin(sheet)
		if i < len(d.Pages) {
			newPainter(d.Sheets, d.Pages[i], sheet).page()
		}
		for _, p := range list {
			p.Paint(sheet)
		}
		d.Marks.End(sheet, d.Paper.Field(), d.Paper.Strip())
		out = append(out, sheet)
	}
	return out
}

// Legend draws what explains the drawing and found no room on its sheets.
func (d *Drawing) Legend() (out []*scene.Sheet) {
	pages := d.Lists.Legend()
	for i, list := range pages {
		sheet := scene.NewSheet(d.Paper.W, d.Paper.H, fmt.Sprintf("legend to the schematic, sheet %d of %d", i+1, len(pages)))
		sheet.ID = fmt.Sprintf("legend-%d", i+1)
		d.paintFrame(sheet, i+1, len(pages))
		for _, p := range list {
			p.Paint(sheet)
		}
		out = append(out, sheet)
	}
	return out
}

// Block is the legend without a frame, in columns of a width, for a page with room for
// it; nil where all stands on the sheets.
func (d *Drawing) Block(widthMM float64) *scene.Sheet {
	lists, high := d.Lists.Block(widthMM)
	if len(lists) == 0 {
		return nil
	}
	sheet := scene.NewSheet(widthMM, high, "legend to the schematic")
	for _, p := range lists {
		p.Paint(sheet)
	}
	return sheet
}

// subject is what the sheets show.
func (d *Drawing) subject() string {
	if d.Marks != nil {
		return "changes"
	}
	return "schematic"
}

// paintFrame draws the frame with the title block and the caution.
func (d *Drawing) paintFrame(sheet *scene.Sheet, number, total int) {
	t := frame.TitleOf(d.Design, d.findings, d.Paper.Name)
	t.Kind, t.Fields[1][0].Value = "Schematic", d.practiceWords()
	third := frame.Field{Name: "system", Value: d.systemWords()}
	if d.Study != nil {
		t.Kind, third = "Study", frame.Field{Name: "situation", Value: d.Study.Name()}
	}
	if d.Marks != nil {
		t.Kind, third = "Changes", frame.Field{Name: "compared with", Value: d.Marks.Was}
	}
	t.Fields[1][2].Value = fmt.Sprintf("%d of %d", number, total)
	t.Fields[2][1] = third
	frame.Draw(sheet, d.Paper, t)
}

func (d *Drawing) practiceWords() string {
	p := d.Design.Practice
	if p == nil {
		return ""
	}
	return fmt.Sprintf("%s: %s / %s drop", p.Name, quantity.Plain(p.DropCritical, quantity.Share), quantity.Plain(p.DropOther, quantity.Share))
}

func (d *Drawing) systemWords() string {
	if v := d.Design.SystemV; v.Given() {
		return quantity.Plain(v.Value, quantity.Voltage) + " DC"
	}
	return ""
}
