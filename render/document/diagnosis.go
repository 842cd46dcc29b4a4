package document

import (
	"strings"

	"fusewright/harness"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Diagnosis is the report for the file: when and with what was read, every reading against its
// bounds, what explains them, what to read next, and where to sign. The date is that of the readings.
func Diagnosis(r *harness.Review, rep *report.DiagnosisReport) []*scene.Sheet {
	d := rep.Diagnosis
	return upright("Diagnosis", r, func(b *book) {
		for _, line := range []struct{ what, text string }{{"Read on", d.Date}, {"by", d.By}, {"Meter", d.Meter}} {
			if line.text != "" {
				b.para(line.what+" "+line.text, plain)
			}
		}
		b.para(report.DiagnosisVerdict(d), bold)
		b.head("Readings")
		b.lay(report.DiagnosisTable(d))
		if len(d.Certain) > 0 {
			b.head("Wrong for certain")
			b.bullets(d.Certain, plain)
		}
		if d.Unexplained != "" {
			b.head("What explains them")
			b.para(d.Unexplained, bold)
		} else if len(d.Explanations) > 0 {
			e := d.Explanations[0]
			b.head("What best explains them")
			b.para(e.Text, bold)
			if line := report.AlikeLine(e); line != "" {
				b.para(line, plain)
			}
			if len(e.Sums) > 0 {
				b.lay(report.SumsTable(e.Sums))
			}
			if len(e.RuledOut) > 0 {
				b.para("On the same way and cleared by the other readings: "+strings.Join(e.RuledOut, ", ")+".", plain)
			}
		}
		if d.Unexplained != "" || len(d.Explanations) > 0 {
			b.head("How sure")
			b.lay(report.SharesTable(d))
		}
		if n := d.Next; n != nil {
			b.head("Read next: " + n.Check + ", " + n.In)
			b.para(n.How, plain)
			b.lay(report.OutcomesTable(n), column{head: "reading", wide: 26})
		}
		if d.Advice != "" {
			b.y += 2
			b.para(d.Advice, plain)
		}
		if len(d.Measured) > 0 {
			b.head("Measured, with twice the standard deviation")
			b.lay(report.MeasuredTable(d))
		}
		if len(d.Withheld) > 0 {
			b.head("Withheld until that is put right and read again")
			for _, w := range d.Withheld {
				b.bullets([]string{w.What + ": " + w.Why + "."}, plain)
			}
		}
		if len(d.Notes) > 0 {
			b.head("To be said with it")
			b.bullets(d.Notes, smallQuiet)
		}
		b.head("Outcome")
		b.need(22)
		b.para("A harness that passes is not thereby safe or lawful: see the caution below.", plain)
		b.blanks("passed (yes or no)", "put right", "signed", "date")
	})
}
