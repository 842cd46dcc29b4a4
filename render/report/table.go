package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"fusewright/harness/design/quantity"
)

// Table is one table, ready to print: on a terminal or on a page.
type Table struct {
	Title string // "" = none
	Note  string // under it; "" = none
	None  string // what to say when it has no rows
	Heads []string
	Right []bool // by column: numbers stand to the right
	Rows  [][]string
	// Groups are headings above rows, by the number of the row.
	Groups map[int]string
	// Looks are the rows with nothing to write in, by number.
	Looks map[int]bool
}

// newTable makes a table. Columns whose head begins with ">" stand to the right.
func newTable(heads ...string) *Table {
	t := &Table{Groups: map[int]string{}, Looks: map[int]bool{}}
	for _, h := range heads {
		text, right := strings.CutPrefix(h, ">")
		t.Heads, t.Right = append(t.Heads, text), append(t.Right, right)
	}
	return t
}

// group begins rows under a heading; "" = none.
func (t *Table) group(heading string) { t.Groups[len(t.Rows)] = heading }

func (t *Table) add(cells ...string) { t.Rows = append(t.Rows, cells) }

func (t *Table) titled(title, none string) *Table {
	t.Title, t.None = title, none
	return t
}

// write prints the table as text, its columns as wide as they need.
func (t *Table) write(b *strings.Builder) {
	if t.Title != "" {
		b.WriteString("\n" + wrap("", t.Title))
	}
	if len(t.Rows) == 0 {
		fmt.Fprintf(b, "  %s\n", t.None)
		return
	}
	lines := [][]string{t.Heads}
	heading := map[int]string{}
	for i, row := range t.Rows {
		heading[len(lines)] = t.Groups[i]
		lines = append(lines, t.folded(row)...)
	}
	wide := make([]int, len(t.Heads))
	for _, row := range lines {
		for i, cell := range row {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	for n, row := range lines {
		if heading[n] != "" {
			b.WriteString("  " + heading[n] + ":\n")
		}
		line := " "
		for i, cell := range row {
			gap := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell))
			if t.Right[i] {
				line += " " + gap + cell
			} else {
				line += " " + cell + gap
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	if t.Note != "" {
		b.WriteString(wrap("  ", t.Note))
	}
}

// folded is a row as lines of cells: long texts go on in the next line, which
// has empty cells in the other columns.
func (t *Table) folded(row []string) [][]string {
	most := 34
	if len(t.Heads) > 8 {
		most = 24
	}
	lines := [][]string{append([]string(nil), row...)}
	for i, cell := range row {
		for k, part := range fold(cell, most, true) {
			if k == len(lines) {
				lines = append(lines, make([]string, len(row)))
			}
			lines[k][i] = part
		}
	}
	return lines
}

// fold breaks a text into lines of at most so many characters, between words; a
// word that is longer is broken where hard says so.
func fold(text string, most int, hard bool) []string {
	return foldWords(quantity.Words(text), most, hard)
}

// foldWords is fold of words that stay whole.
func foldWords(words []string, most int, hard bool) []string {
	var out []string
	line := ""
	for _, word := range words {
		if joined := strings.TrimSpace(line + " " + word); utf8.RuneCountInString(joined) <= most {
			line = joined
			continue
		}
		if line != "" {
			out = append(out, line)
		}
		r := []rune(word)
		for ; hard && len(r) > most && !quantity.Whole(word); r = r[most:] {
			out = append(out, string(r[:most]))
		}
		line = string(r)
	}
	return append(out, line)
}

// NewTable makes a table for a paper; heads as of the tables here.
func NewTable(heads ...string) *Table { return newTable(heads...) }

// Add adds a row, Group begins rows under a heading.
func (t *Table) Add(cells ...string)  { t.add(cells...) }
func (t *Table) Group(heading string) { t.group(heading) }
