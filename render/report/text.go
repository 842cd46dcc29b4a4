package report

import (
	"fmt"
	"io"
	"strings"
)

// textWidth is where prose is wrapped, for terminals of 100 columns.
const textWidth = 98

// WriteText prints the findings, most severe first, each with its place,
// numbers, reason and remedy, and a summary with the caution.
func WriteText(w io.Writer, rep *Report) error {
	var b strings.Builder
	for _, f := range rep.Findings {
		writeFinding(&b, f)
	}
	writeSituations(&b, rep)
	fmt.Fprintf(&b, "%s: %s\n", nameOf(rep.Design), rep.Counts)
	b.WriteString(wrap("", Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

// String says the counts in words: "1 danger · 0 fault · 2 advice · 1 accepted".
func (c Counts) String() string {
	return fmt.Sprintf("%d danger · %d fault · %d advice · %d accepted", c.Danger, c.Fault, c.Advice, c.Accepted)
}

func nameOf(h Heading) string {
	if h.Revision == "" {
		return h.Title
	}
	return h.Title + ", revision " + h.Revision
}

func writeFinding(b *strings.Builder, f Finding) {
	severity := f.Severity
	if f.Accepted != "" {
		severity = "accepted " + severity
	}
	if f.Known {
		severity = "known " + severity
	}
	fmt.Fprintf(b, "%s:%d:%d: %s: %s [%s]\n", f.File, f.Line, f.Col, severity, f.What, f.Rule)
	if line := numbersLine(f); line != "" {
		b.WriteString(wrap("    ", line))
	}
	b.WriteString(wrap("    why:    ", f.Why))
	b.WriteString(wrap("    change: ", f.Change))
	if f.Accepted != "" {
		b.WriteString(wrap("    accepted because: ", f.Accepted))
	}
	b.WriteByte('\n')
}

func numbersLine(f Finding) string {
	var parts []string
	if f.Ref != "" && f.Ref != f.Part {
		parts = append(parts, f.Ref+" "+f.Part)
	} else {
		parts = append(parts, f.Part)
	}
	for _, n := range f.Numbers {
		parts = append(parts, n.Name+" "+n.String())
	}
	if f.Situation != "" {
		parts = append(parts, "worst in "+f.Situation)
	}
	return strings.Join(parts, " · ")
}

// String is the figure with its unit, or "none" when it has no finite value.
func (n Number) String() string {
	if n.Value == nil {
		return "none"
	}
	return strings.TrimSpace(threeDigits(*n.Value) + " " + n.Unit)
}

// writeSituations prints one line per situation: what the source gives.
func writeSituations(b *strings.Builder, rep *Report) {
	for _, s := range rep.Situations {
		fmt.Fprintf(b, "%-28s ", s.Name+":")
		if s.BatteryA == nil || s.ChargingA == nil {
			fmt.Fprintf(b, "no result, %s %s\n", s.Status, s.Why)
			continue
		}
		fmt.Fprintf(b, "charging %s A, battery %s A\n",
			threeDigits(*s.ChargingA), threeDigits(*s.BatteryA))
	}
	if len(rep.Situations) > 0 {
		b.WriteByte('\n')
	}
}

// wrap folds prose at textWidth; following lines are indented below the first
// word after the lead.
func wrap(lead, text string) string {
	indent := strings.Repeat(" ", len(lead))
	var b strings.Builder
	line := lead
	empty := true
	for _, word := range strings.Fields(text) {
		if !empty && len([]rune(line))+1+len([]rune(word)) > textWidth {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	b.WriteString(strings.TrimRight(line, " ") + "\n")
	return b.String()
}
