package document

import (
	"fmt"

	"fusewright/harness"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Study lays the fault study and the protection study on pages: the tables,
// then a time–current picture of each fuse with the wire it protects worst.
func Study(r *harness.Review) ([]*scene.Sheet, error) {
	b := newWideBook("Fault and protection study", r)
	quiet := scene.TextStyle{SizeMM: textSizeMM, Colour: grey}
	rep := report.NewStudy(r)
	b.para("Greatest current: "+rep.Greatest+".", quiet)
	b.para("Least current: "+rep.Least+".", quiet)
	b.head("To look at first")
	b.bullets(rep.Summary(), scene.TextStyle{SizeMM: textSizeMM, Colour: ink})
	for _, t := range rep.Tables() {
		b.studyTable(t)
	}
	if err := b.curves(r); err != nil {
		return nil, fmt.Errorf("fault and protection study: %w", err)
	}
	return b.finish(), nil
}

// studyTable writes one table; its columns share the page by their longest text.
func (b *book) studyTable(t *report.Table) {
	b.need(tableLeastMM)
	b.head(t.Title)
	quiet := scene.TextStyle{SizeMM: textSizeMM, Colour: grey}
	if len(t.Rows) == 0 {
		b.para(t.None, quiet)
		return
	}
	out := b.newTable(studyColumns(t))
	for _, row := range t.Rows {
		out.row(row...)
	}
	if t.Note != "" {
		b.y += 1.5
		b.para(t.Note, quiet)
	}
}

// tableLeastMM is the room that a table's title, head and first row need
// together.
const tableLeastMM = 34.0

// mostColumnMM keeps one long text from pressing the numbers together.
const mostColumnMM = 46.0

func studyColumns(t *report.Table) []column {
	columns := make([]column, len(t.Heads))
	for i, head := range t.Heads {
		wide := scene.TextWidthMM(head, smallSizeMM, scene.Bold)
		for _, row := range t.Rows {
			wide = max(wide, scene.TextWidthMM(row[i], smallSizeMM, scene.Regular))
		}
		columns[i] = column{head: head, wide: min(wide, mostColumnMM) + 2*padMM + 1}
		if t.Right[i] {
			columns[i].align = scene.Right
		}
	}
	columns[0].face = scene.Bold
	return columns
}
