package report

import (
	"bytes"
	"fmt"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/workshop/diagnosis"
)

// DiagnosisReport is what readings say of a design.
type DiagnosisReport struct {
	Fusewright int     `json:"fusewright_diagnosis"`
	Design     Heading `json:"measured_design"`
	*diagnosis.Diagnosis
	Lines   []DesignLine `json:"lines,omitempty"` // of the design, with what was measured
	Caution string       `json:"caution"`
}

// DesignLine is a whole line of a design with its number.
type DesignLine struct {
	Number int    `json:"line"`
	Text   string `json:"text"`
}

// NewDiagnosis makes the report.
func NewDiagnosis(rep *Report, d *diagnosis.Diagnosis, lines []DesignLine) *DiagnosisReport {
	return &DiagnosisReport{Fusewright: Version, Design: rep.Design, Diagnosis: d, Lines: lines, Caution: rep.Caution}
}

// ChangedLines are the lines of a text that differ from what it was, whole, with their numbers.
func ChangedLines(was, now []byte) (lines []DesignLine) {
	had := map[string]int{}
	for line := range strings.Lines(string(was)) {
		had[line]++
	}
	n := 0
	for line := range strings.Lines(string(now)) {
		if n++; had[line] > 0 {
			had[line]--
			continue
		}
		lines = append(lines, DesignLine{n, strings.TrimRight(line, "\r\n")})
	}
	return lines
}

// DiagnosisVerdict is the outcome in a sentence.
func DiagnosisVerdict(d *diagnosis.Diagnosis) string {
	n := len(d.Readings)
	switch {
	case n == 0:
		return "No readings."
	case d.Failed > 0:
		return fmt.Sprintf("%d of %d readings out of bounds.", d.Failed, n)
	case d.Wrong:
		return fmt.Sprintf("%s in bounds, and yet together they are not those of a sound harness.", all(n))
	}
	unjudged := n - d.Passed - d.Doubtful
	switch {
	case d.Doubtful > 0:
		return fmt.Sprintf("%d of %d readings out of bounds by less than the meter may be off: read them again.", d.Doubtful, n)
	case unjudged == 0:
		return fmt.Sprintf("%s in bounds.", all(n))
	}
	return fmt.Sprintf("%s in bounds, %d not judged.", wording.Count(d.Passed, "reading", "readings"), unjudged)
}

func all(n int) string {
	if n == 1 {
		return "The one reading is"
	}
	return fmt.Sprintf("All %d readings are", n)
}

// AlikeLine says what the readings cannot tell from the likeliest; "" = nothing.
func AlikeLine(e *diagnosis.Explanation) string {
	if len(e.Alike) == 0 {
		return ""
	}
	return "The readings taken cannot tell it from " + wording.Or(e.Alike) + "."
}

// DiagnosisTable is every reading against its bounds.
func DiagnosisTable(d *diagnosis.Diagnosis) *Table {
	t := newTable("check", "what", ">reads", ">allowed", "verdict")
	in := ""
	for _, j := range d.Readings {
		if j.In != in {
			in = j.In
			t.group(in)
		}
		verdict := string(j.Verdict)
		if j.Why != "" {
			verdict += ": " + j.Why
		}
		t.add(j.Check, j.What, j.Reads, j.Allowed, verdict)
	}
	return t
}

// SumsTable is how the size of the likeliest fault is reckoned.
func SumsTable(sums []diagnosis.Sum) *Table {
	t := newTable("", "sum", ">value", "")
	for _, s := range sums {
		sum := s.Sum
		if sum != "" {
			sum += " ="
		}
		t.add(s.Label, sum, s.Value, s.Note)
	}
	return t
}

// MeasuredTable is what the readings know better than the design.
func MeasuredTable(d *diagnosis.Diagnosis) *Table {
	t := newTable("measured", ">design", ">reads", ">within", "from")
	for _, m := range d.Measured {
		t.add(m.What, m.Was, m.Value, m.Within, m.From)
	}
	return t
}

// SharesTable is how likely each explanation is.
func SharesTable(d *diagnosis.Diagnosis) *Table {
	t := newTable(">share", "explanation")
	rest := 1 - d.Sound
	for _, e := range d.Explanations {
		rest -= e.Share
		t.add(likely(e.Share), e.Text)
	}
	if rest > 0.005 {
		t.add(likely(rest), "Something else.")
	}
	if d.Sound > 0.005 {
		t.add(likely(d.Sound), "Nothing that the network tells of.")
	}
	return t
}

// likely is a share in whole per cent; what is not quite all or none is not said to be.
func likely(s float64) string {
	switch {
	case s > 0.995:
		return "over 99 %"
	case s < 0.01:
		return "under 1 %"
	}
	return quantity.Fixed(100*s, 0) + " %"
}

// OutcomesTable is what the next reading may be.
func OutcomesTable(n *diagnosis.Next) *Table {
	t := newTable("reads", "means", ">share")
	for _, o := range n.Outcomes {
		t.add(o.Reads, o.Means, likely(o.Share))
	}
	return t
}

// diagnosisWidth is where its prose is wrapped: it is read beside the machine, on a small screen.
const diagnosisWidth = 80

// WriteDiagnosis prints it as text.
func WriteDiagnosis(out *bytes.Buffer, r *DiagnosisReport) error {
	b, d := &strings.Builder{}, r.Diagnosis
	fmt.Fprintf(b, "%s · diagnosis\n", nameOf(r.Design))
	if d.Date != "" || d.By != "" {
		fmt.Fprintf(b, "Read %s\n", strings.Join(strings.Fields("on "+d.Date+" "+by(d.By)), " "))
	}
	fmt.Fprintf(b, "Meter %s\n\n%s\n\n", d.Meter, DiagnosisVerdict(d))
	DiagnosisTable(d).write(b)
	prose := func(lead, text string) string { return wrapAt(diagnosisWidth, lead, text) }
	head := func(text string) { fmt.Fprintf(b, "\n%s\n\n", text) }
	if len(d.Certain) > 0 {
		head("Wrong for certain")
		for _, line := range d.Certain {
			b.WriteString(prose("  - ", line))
		}
	}
	if d.Unexplained != "" {
		head("What explains them")
		b.WriteString(prose("  ", d.Unexplained))
	} else if len(d.Explanations) > 0 {
		e := d.Explanations[0]
		head("What best explains them")
		b.WriteString(prose("  ", e.Text))
		if line := AlikeLine(e); line != "" {
			b.WriteString(prose("  ", line))
		}
		if len(e.Sums) > 0 {
			b.WriteString("\n")
			SumsTable(e.Sums).write(b)
		}
		if len(e.RuledOut) > 0 {
			b.WriteString("\n" + prose("  ", "On the same way and cleared by the other readings: "+strings.Join(e.RuledOut, ", ")+"."))
		}
	}
	if d.Unexplained != "" || len(d.Explanations) > 0 {
		head("How sure")
		SharesTable(d).write(b)
	}
	if n := d.Next; n != nil {
		head("Read next")
		b.WriteString(prose("  ", n.Check+", "+n.In) + prose("  ", n.How) + "\n")
		OutcomesTable(n).write(b)
	}
	if d.Advice != "" {
		b.WriteString("\n" + prose("", d.Advice))
	}
	if len(d.Measured) > 0 {
		head("Measured, with twice the standard deviation")
		MeasuredTable(d).write(b)
		if len(r.Lines) > 0 {
			b.WriteString("\n  Lines for the design; --write puts them in:\n")
			for _, l := range r.Lines {
				fmt.Fprintf(b, "  %4d  %s\n", l.Number, l.Text)
			}
		}
	}
	if len(d.Withheld) > 0 {
		head("Withheld until that is put right and read again")
		for _, w := range d.Withheld {
			b.WriteString(prose("  - ", w.What+": "+w.Why+"."))
		}
	}
	if len(d.Notes) > 0 {
		head("To be said with it")
		for _, line := range d.Notes {
			b.WriteString(prose("  - ", line))
		}
	}
	b.WriteString("\n" + prose("", r.Caution))
	out.WriteString(b.String())
	return nil
}

func by(name string) string {
	if name == "" {
		return ""
	}
	return "by " + name
}
