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
	rep := report.NewStudy(r)
	return pulledBack(func() *book { return newBook("Fault and protection study", r) }, func(b *book) error {
		b.para("Greatest current: "+rep.Greatest+".", smallQuiet)
		b.para("Least current: "+rep.Least+".", smallQuiet)
		b.head("To look at first")
		b.bullets(rep.Summary(), plain)
		for _, t := range rep.PaperTables() {
			b.studyTable(t)
		}
		if err := b.curves(r); err != nil {
			return fmt.Errorf("fault and protection study: %w", err)
		}
		return nil
	})
}

// studyTable writes one table under its title.
func (b *book) studyTable(t *report.Table) {
	b.head(t.Title)
	if len(t.Rows) == 0 {
		b.para(t.None, quiet)
		return
	}
	b.lay(t)
}
