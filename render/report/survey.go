package report

import (
	"bytes"
	"fmt"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/caution"
	"fusewright/harness/design/survey"
)

// SurveyIntro is what the survey sheet begins with.
const SurveyIntro = "Measure before the harness is designed: a figure that was read is worth ten that were assumed. " +
	"Meter with volts, ohms and milliamperes, clamp for DC amperes, thermometer, string. The ways to measure are common practice, no source."

// SurveyTable is a group of the survey as a table.
func SurveyTable(g *survey.Group) *Table {
	t := newTable("what", "how", "in the design")
	for _, x := range g.Blanks {
		t.add(strings.Join(x.Path[1:], ", "), x.How, x.Key)
	}
	return t
}

// WriteSurvey writes the sheet as Markdown.
func WriteSurvey(b *bytes.Buffer, d *design.Design, groups []*survey.Group) error {
	fmt.Fprintf(b, "# Survey: %s\n\n%s\n\n**%s**\n\nMeasured by ____________ on ____________ with ____________, air ______ °C\n", plainMarkdown(d.Title.Value),
		SurveyIntro, caution.OnPages(d.Afloat(), d.NamesPetrol()))
	for _, g := range groups {
		fmt.Fprintf(b, "\n## %s\n\n", g.Title)
		for _, line := range g.Setup {
			fmt.Fprintf(b, "%s\n\n", line)
		}
		for _, line := range g.Cautions {
			fmt.Fprintf(b, "**Caution.** %s\n\n", line)
		}
		t := SurveyTable(g)
		b.WriteString("| what | how | in the design | reading |\n|---|---|---|---|\n")
		for _, row := range t.Rows {
			fmt.Fprintf(b, "| %s | %s | %s | ________ |\n", plainMarkdown(row[0]), plainMarkdown(row[1]), plainMarkdown(row[2]))
		}
	}
	return nil
}
