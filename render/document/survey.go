package document

import (
	"fusewright/harness"
	"fusewright/harness/design/survey"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Survey lays out what to measure before designing: by group what to do first, the cautions,
// and each reading with how to take it, its key in the design and a blank.
func Survey(r *harness.Review, groups []*survey.Group) []*scene.Sheet {
	return upright("Survey", r, func(b *book) {
		b.para(report.SurveyIntro, plain)
		b.blanks("measured by", "date", "meter", "air, °C")
		for _, g := range groups {
			b.head(g.Title)
			for _, line := range g.Setup {
				b.para(line, plain)
			}
			if len(g.Cautions) > 0 {
				b.bullets(g.Cautions, bold)
			}
			b.lay(report.SurveyTable(g), column{head: "reading", wide: 26})
		}
	})
}
