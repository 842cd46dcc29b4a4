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
	rep := report.NewStudy(r)
	b.para("Greatest current: "+rep.Greatest+".", quiet)
	b.para("Least current: "+rep.Least+".", quiet)
	b.head("To look at first")
	b.bullets(rep.Summary(), plain)
	for _, t := range rep.Tables() {
		b.studyTable(t)
	}
	if err := b.curves(r); err != nil {
		return nil, fmt.Errorf("fault and protection study: %w", err)
	}
	return b.finish(), nil
}

// studyTable writes one table under its title.
func (b *book) studyTable(t *report.Table) {
	b.need(tableLeastMM)
	b.head(t.Title)
	if len(t.Rows) == 0 {
		b.para(t.None, quiet)
		return
	}
	b.lay(t)
}

// tableLeastMM is the room that a table's title, head and first row need
// together.
const tableLeastMM = 34.0
