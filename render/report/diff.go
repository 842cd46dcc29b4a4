package report

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"strings"

	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/compare"
)

// DiffVersion is the version of the JSON shape of a comparison; it rises as
// Version does.
const DiffVersion = 1

// Diff is the comparison of two reviews in print order.
type Diff struct {
	Fusewright int           `json:"fusewright_diff"`
	Old        Heading       `json:"old"`
	New        Heading       `json:"new"`
	Renumbered []DiffLabel   `json:"renumbered"`
	Findings   []DiffFinding `json:"findings"`
	Fuses      []DiffItem    `json:"fuses"`
	Parts      []DiffItem    `json:"parts"`
	Wires      []DiffItem    `json:"wires"`
	Budget     []DiffAmount  `json:"budget"`
	Purchase   []DiffAmount  `json:"purchase"`
	Caution    string        `json:"caution"`
}

// DiffFinding is a finding that came, went or changed.
type DiffFinding struct {
	Change string `json:"change"` // added, removed or changed
	Was    string `json:"was,omitempty"`
	Now    string `json:"now,omitempty"`
	// WasFigure is the figure of a finding that has got worse.
	WasFigure string   `json:"was_figure,omitempty"`
	Of        *Finding `json:"finding"` // the new one, or the one that is gone

	standing string
}

// DiffItem is a part or wire that came, went or changed.
type DiffItem struct {
	Change string      `json:"change"`
	Kind   string      `json:"kind"`
	Name   string      `json:"name"`
	Ref    string      `json:"ref,omitempty"` // of a wire its number, of a fuse or part its label; of what is gone the old one
	Fields []DiffField `json:"fields"`

	line string
}

// DiffLabel is a part or wire under another label than before.
type DiffLabel struct {
	Kind string `json:"kind"`
	Name string `json:"name"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

// DiffField is one property; empty = not there.
type DiffField struct {
	Name string `json:"name"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

// DiffAmount is one figure; null = not there, or without a finite value.
type DiffAmount struct {
	Change string   `json:"change"`
	Name   string   `json:"name"`
	Old    *float64 `json:"old"`
	New    *float64 `json:"new"`
	Unit   string   `json:"unit"`

	old, new float64
	unit     lengths.Unit
}

// NewDiff makes the printable form of a comparison.
func NewDiff(c *compare.Comparison) *Diff {
	d := &Diff{Fusewright: DiffVersion, Old: New(c.Old).Design, New: New(c.New).Design, Findings: []DiffFinding{},
		Renumbered: []DiffLabel{}, Fuses: diffItems(c, c.Fuses), Parts: diffItems(c, c.Parts), Wires: diffItems(c, c.Wires),
		Budget: diffAmounts(c, c.Budget), Purchase: diffAmounts(c, c.Purchase), Caution: CautionOf(c.New.Design)}
	for _, r := range c.Renumbered {
		d.Renumbered = append(d.Renumbered, DiffLabel(r))
	}
	for _, f := range c.Findings {
		row := DiffFinding{Change: string(f.What), Was: compare.StandingOf(f.Old), Now: compare.StandingOf(f.New), standing: f.Standing()}
		of := f.New
		if of == nil {
			of = f.Old
		}
		printed := findingRow(of, lengths.Of(c.New.Design))
		row.Of = &printed
		if f.New != nil && f.Old != nil && f.New.Figure.WorseThan(f.Old.Figure) {
			row.WasFigure = f.Old.Figure.String()
		}
		d.Findings = append(d.Findings, row)
	}
	return d
}

func diffItems(c *compare.Comparison, list []compare.Item) []DiffItem {
	out, u := []DiffItem{}, lengths.Of(c.New.Design)
	for _, i := range list {
		row := DiffItem{Change: string(i.What), Kind: i.Kind, Name: i.Name, Ref: cmp.Or(i.NewRef, i.OldRef), Fields: []DiffField{}}
		for _, f := range i.Fields {
			row.Fields = append(row.Fields, DiffField{f.Name, f.Old, f.New})
		}
		row.line = wording.Present([]string{row.Ref, i.Kind, i.Name}, " ") + ": " + i.Text(u)
		out = append(out, row)
	}
	return out
}

func diffAmounts(c *compare.Comparison, list []compare.Amount) []DiffAmount {
	out, u := []DiffAmount{}, lengths.Of(c.New.Design)
	for _, a := range list {
		out = append(out, DiffAmount{Change: string(a.What), Name: a.Name, Old: finite(a.Old), New: finite(a.New),
			Unit: a.Unit, old: a.Old, new: a.New, unit: u})
	}
	return out
}

// diffSection is one list under its heading, as lines of plain text.
type diffSection struct {
	heading string
	lines   []diffLine
}

// diffLine is the mark of a change and its text.
type diffLine struct{ mark, text string }

var diffMarks = map[string]string{
	string(compare.Added): "+", string(compare.Removed): "−", string(compare.Changed): "~",
}

func (d *Diff) sections() []diffSection {
	var found, bought, balance, labels []diffLine
	for _, l := range d.Renumbered {
		labels = append(labels, diffLine{diffMarks[string(compare.Changed)], l.New + " was " + l.Old + ": " + l.Kind + " " + l.Name})
	}
	for _, f := range d.Findings {
		found = append(found, diffLine{diffMarks[f.Change], f.text()})
	}
	for _, a := range d.Budget {
		balance = append(balance, diffLine{diffMarks[a.Change], a.text()})
	}
	for _, a := range d.Purchase {
		bought = append(bought, diffLine{diffMarks[a.Change], a.text()})
	}
	return []diffSection{
		{"Findings", found}, {"Labels of a built loom that are wrong now", labels}, {"Fuses", itemLines(d.Fuses)}, {"Wires", itemLines(d.Wires)},
		{"Parts", itemLines(d.Parts)}, {"Charging budget", balance}, {"To buy", bought},
	}
}

func itemLines(list []DiffItem) []diffLine {
	var out []diffLine
	for _, i := range list {
		out = append(out, diffLine{diffMarks[i.Change], i.line})
	}
	return out
}

func (f DiffFinding) text() string {
	return fmt.Sprintf("%s: %s [%s] %s:%d", f.standing, f.Of.What, f.Of.Rule, f.Of.File, f.Of.Line)
}

func (a DiffAmount) text() string {
	switch a.Change {
	case string(compare.Added):
		return fmt.Sprintf("%s: %s", a.Name, a.figure(a.new))
	case string(compare.Removed):
		return fmt.Sprintf("%s: was %s", a.Name, a.figure(a.old))
	}
	return fmt.Sprintf("%s: %s → %s", a.Name, a.figure(a.old), a.figure(a.new))
}

func (a DiffAmount) figure(v float64) string {
	switch unit := a.Unit; {
	case math.IsInf(v, 1):
		return "without end"
	case math.IsNaN(v):
		return "none"
	case unit == "m":
		return a.unit.Amount(v) + " " + a.unit.Large()
	case quantity.OfUnit(unit) == "" && v == math.Trunc(v): // pieces and packs
		return strings.TrimSpace(quantity.Fixed(v, 0) + " " + unit)
	}
	return figureText(v, a.Unit)
}

// summary counts the changes in a sentence.
func (d *Diff) summary() string {
	var parts []string
	for _, s := range d.sections() {
		if n := len(s.lines); n > 0 {
			parts = append(parts, fmt.Sprintf("%s %d", strings.ToLower(s.heading), n))
		}
	}
	if len(parts) == 0 {
		return "nothing changed that the review knows of"
	}
	return "changed: " + strings.Join(parts, ", ")
}

// WriteDiff prints a comparison for people: what is graver first.
func WriteDiff(w io.Writer, d *Diff) error {
	var b strings.Builder
	fmt.Fprintf(&b, "old: %s, %s\nnew: %s, %s\n%s\n", d.Old.File, nameOf(d.Old), d.New.File, nameOf(d.New), d.summary())
	for _, s := range d.sections() {
		if len(s.lines) == 0 {
			continue
		}
		b.WriteString("\n" + s.heading + "\n")
		for _, l := range s.lines {
			b.WriteString(wrap("  "+l.mark+" ", l.text))
		}
	}
	b.WriteString("\n" + wrap("", d.Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

// WriteDiffMarkdown prints a comparison as a comment for a code-review site.
func WriteDiffMarkdown(w io.Writer, d *Diff) error {
	var b strings.Builder
	fmt.Fprintf(&b, "## %s\n\n", plainMarkdown(nameOf(d.New)))
	fmt.Fprintf(&b, "%s against %s: %s\n", plainMarkdown(d.New.File), plainMarkdown(d.Old.File), d.summary())
	for _, s := range d.sections() {
		if len(s.lines) == 0 {
			continue
		}
		fmt.Fprintf(&b, "\n### %s\n\n| | |\n|---|---|\n", s.heading)
		for _, l := range s.lines {
			fmt.Fprintf(&b, "| %s | %s |\n", l.mark, plainMarkdown(l.text))
		}
	}
	fmt.Fprintf(&b, "\n*%s*\n", d.Caution)
	_, err := io.WriteString(w, b.String())
	return err
}

// plainMarkdown takes the meaning from every character that Markdown or HTML
// gives one, so that a name from a design is shown as it is.
func plainMarkdown(s string) string {
	var b strings.Builder
	for _, r := range oneLine(s) {
		switch {
		case r == '<':
			b.WriteString("&lt;")
			continue
		case r == '&':
			b.WriteString("&amp;")
			continue
		case r == '@': // would call a person by name on some sites
			b.WriteString("&#64;")
			continue
		case strings.ContainsRune("\\`*_{}[]()#+!|~$", r):
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
