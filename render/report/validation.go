package report

import (
	"fmt"
	"io"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/validation"
)

// Validation is the comparison with published sources for programs.
type Validation struct {
	Fusewright  int                     `json:"fusewright_validation"`
	Comparisons []validation.Comparison `json:"comparisons"`
	Caution     string                  `json:"caution"`
}

// NewValidation wraps comparisons in the versioned shape.
func NewValidation(list []validation.Comparison) *Validation {
	return &Validation{Fusewright: Version, Comparisons: list, Caution: Caution}
}

// WriteValidation prints the comparisons as the Markdown page docs/validation.md.
func WriteValidation(w io.Writer, list []validation.Comparison) error {
	var b strings.Builder
	b.WriteString(validationHead)
	for _, part := range validationParts {
		rows, values := 0, 0
		var table strings.Builder
		for _, c := range list {
			if c.Kind == part.kind {
				rows, values = rows+1, values+c.N
				fmt.Fprintf(&table, "| %s | %s | %d | %s | %s | %s |\n", cell(c.What), cell(c.Source), c.N,
					percent(c.MedianShare), percent(c.MaxShare), verdict(c))
			}
		}
		fmt.Fprintf(&b, part.head, rows, values)
		b.WriteString(tableHead + table.String())
	}
	b.WriteString("\n## What is allowed, and what was left out\n\n")
	for _, c := range list {
		fmt.Fprintf(&b, "- **%s** (%s; %s). Farthest at %s. Tolerance: %s.", c.What, c.Source, c.Certainty, c.MaxAt, c.Tolerance)
		if c.Missing > 0 {
			fmt.Fprintf(&b, " The program gives no value for %d of the source's.", c.Missing)
		}
		if c.Note != "" {
			fmt.Fprintf(&b, " %s.", strings.TrimSuffix(c.Note, "."))
		}
		b.WriteString("\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// validationParts are the tables of the page: what proves something of the models first.
var validationParts = []struct {
	kind validation.Kind
	head string
}{
	{validation.Prediction, `
## Prediction

%d comparisons, %d values: the program against a measurement, or against a table that it does not use for the answer.
Only these say how good its models are.

`},
	{validation.ReadBack, `
## Read back

%d comparisons, %d values: a table of the library read back, or a formula against values that were made with it or
that it was fitted to. These catch slips in copying and in units, and say nothing about how true the table or formula is.

`},
}

const tableHead = "| compared | source | values | median | farthest | unsafe |\n| --- | --- | ---: | ---: | ---: | --- |\n"

const validationHead = `# How the program compares with published sources

Written by ` + "`go run ./cmd/fusewright validate`" + ` and compared with the program by the tests. A deviation is the
program's value divided by the published one, less one. *Unsafe* counts values on the dangerous side by more than the
tolerance. Where a table governs, the heat balance is only the second opinion: the program takes the smaller of the
two, and the count says how often the table is smaller by more than the tolerance.

For wires laid together the heat balance allows up to 14 % more than the published aircraft curves where a fifth to two fifths
of them are loaded, and up to 13 % more than the grouping factors of VDE 0298-4 and NEC relative to one wire: there the
practice's factor governs. It allows 16 % more than an electronic-cable chart at 5 wires, which no practice uses. No chart
that was found goes beyond 61 loaded wires (VDE 0298-4; the aircraft figure ends at 20): above that the only check on the
heat balance is that each further loaded wire leaves less for the others. What the program chooses and objects to is
compared with the trade in docs/trade.md.

` + Caution + `
`

// verdict says how many values lie on the unsafe side.
func verdict(c validation.Comparison) string {
	switch {
	case c.Governed:
		return fmt.Sprintf("table governs at %d", c.Unsafe)
	case c.Unsafe == 0:
		return "none"
	}
	return fmt.Sprintf("**%d**", c.Unsafe)
}

func percent(share float64) string {
	text := quantity.Fixed(share*100, 1) + " %"
	if share < 0 || text == "0.0 %" {
		return text
	}
	return "+" + text
}

// cell keeps a text inside one cell of a Markdown table.
func cell(s string) string { return strings.ReplaceAll(s, "|", "\\|") }
