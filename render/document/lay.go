package document

import (
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// keptRows is how many rows of a table stand at least before and after a break.
const keptRows = 3

// lay writes a table of a report, with its note. Columns of boxes stand beside it,
// to write in where they are wide enough, else to tick.
func (b *book) lay(t *report.Table, boxes ...column) {
	var before, after []column
	for _, box := range boxes {
		if box.first {
			before = append(before, box)
		} else {
			after = append(after, box)
		}
	}
	columns := append(append(before, b.fitted(t, boxes)...), after...)
	out := b.tableAt(b.left(), b.width(), columns)
	if len(after) > 0 && after[0].wide > tickMM {
		out.leastMM = b.writeInMM()
	}
	rows := out.withBoxes(t.Rows, len(before), len(after))
	b.need(out.headMM() + out.heightOf(t, rows, 0))
	out.head()
	for i, row := range rows {
		if heading := t.Groups[i]; heading != "" {
			out.group(heading)
		}
		if i > 0 && b.y > b.top {
			out.keep(out.heightOf(t, rows, i))
		}
		out.row(row...)
		for k, c := range columns {
			if k >= len(before) && k < len(columns)-len(after) {
				continue
			}
			switch {
			case c.wide <= tickMM:
				out.tick(k)
			case !t.Looks[i]:
				out.blank(k)
			}
		}
	}
	if t.Note != "" {
		b.y += 1
		b.para(t.Note, smallQuiet)
	}
}

// fitting is a table of so many rows in a width less that of its boxes.
type fitting struct {
	table  *report.Table
	rows   int
	wideMM float64
}

// fitted are the columns of a table in the width of the book's, worked out once.
func (b *book) fitted(t *report.Table, boxes []column) []column {
	wideMM := b.width()
	for _, box := range boxes {
		wideMM -= box.wide
	}
	of := fitting{t, len(t.Rows), wideMM}
	columns, known := b.fits[of]
	if !known {
		columns = fitted(t, wideMM)
		b.fits[of] = columns
	}
	return columns
}

// withBoxes gives rows the empty cells of the boxes beside them.
func (t *table) withBoxes(rows [][]string, before, after int) [][]string {
	all := make([][]string, len(rows))
	for i, row := range rows {
		cells := append(make([]string, before), row...)
		all[i] = append(cells, make([]string, after)...)
	}
	return all
}

// headMM is the height of the table's head.
func (t *table) headMM() float64 {
	_, high := t.heads(scene.Bold)
	return high
}

// heightOf is the height of what is kept together from a row on: the first rows and
// the last of a table, and a group's heading with its first rows.
func (t *table) heightOf(list *report.Table, rows [][]string, from int) (high float64) {
	keep := 1
	if from == 0 || from == len(rows)-keptRows || list.Groups[from] != "" {
		keep = keptRows
	}
	for i := from; i < min(from+keep, len(rows)); i++ {
		if list.Groups[i] != "" {
			if i > from && from > 0 && from != len(rows)-keptRows {
				break // a short group ends
			}
			high += t.groupHigh(list.Groups[i])
		}
		_, row := t.fold(rows[i], smallSizeMM, scene.Regular)
		high += max(row, t.leastMM)
	}
	return min(high, (t.book.pageBottom()-marginMM-headingMM)/2)
}

// keep begins a new page when the height does not fit; the heading of a group that
// waits goes with it.
func (t *table) keep(high float64) {
	due := t.due
	if due != "" {
		t.inGroup = ""
	}
	t.room(high)
	t.due = due
}

const (
	// writeInMM is the least height of a row that takes a reading by hand, tightInMM where
	// that saves a page, and tickMM the most width of a column for ticks.
	writeInMM, tightInMM, tickMM = 5.6, 5.0, 12.0
	// clearMM keeps numbers clear of the text beside them.
	clearMM = 1.6
)

func (b *book) writeInMM() float64 {
	if b.tight {
		return tightInMM
	}
	return writeInMM
}

// fitted gives the columns of a report's table their widths in millimetres by what
// stands in them: so that the rows take the fewest lines, and none gets narrower than
// its longest word or, where even that is too much, than its longest quantity.
func fitted(t *report.Table, widthMM float64) []column {
	columns, least, bare := make([]column, len(t.Heads)), make([]float64, len(t.Heads)), make([]float64, len(t.Heads))
	cells := make([][]float64, len(t.Rows)+1)
	total := 0.0
	for i, head := range t.Heads {
		c := column{head: head}
		if i == 0 {
			c.face = scene.Bold
		}
		edge := 2*padMM + 0.5
		if t.Right[i] {
			c.align = scene.Right
			if i+1 < len(t.Heads) && !t.Right[i+1] {
				edge += clearMM
			}
		}
		least[i], bare[i] = longestMM(quantity.Words(head), scene.Bold), barestMM
		cells[len(t.Rows)] = append(cells[len(t.Rows)], scene.TextWidthMM(head, smallSizeMM, scene.Bold)+edge)
		for k, row := range t.Rows {
			words := quantity.Words(row[i])
			if t.Right[i] && len(row[i]) < wholeFigure {
				words = []string{row[i]} // not of the row: it is thinned out below
			}
			cells[k] = append(cells[k], scene.TextWidthMM(row[i], smallSizeMM, c.face)+edge)
			least[i] = max(least[i], longestMM(words, c.face))
			words = slices.DeleteFunc(words, func(w string) bool { return !quantity.Whole(w) })
			bare[i] = max(bare[i], longestMM(words, c.face))
		}
		least[i], bare[i] = least[i]+edge, bare[i]+edge
		total += least[i]
		columns[i] = c
	}
	if total > widthMM {
		least = between(bare, least, widthMM)
	}
	for i, wide := range scene.ColumnWidths(cells, least, widthMM) {
		columns[i].wide = wide
	}
	return columns
}

// wholeFigure is how long a text of a column of figures must be to be parted.
const wholeFigure = 24

// barestMM is the least that is left of a column whose words are broken.
const barestMM = 6

// between gives columns that cannot all have their longest word the width at which
// the widest give way, down to the bare ones.
func between(bare, least []float64, widthMM float64) []float64 {
	out := make([]float64, len(least))
	low, high := 0.0, widthMM
	for range 20 {
		middle, sum := (low+high)/2, 0.0
		for i := range out {
			out[i] = max(bare[i], min(least[i], middle))
			sum += out[i]
		}
		if sum > widthMM {
			high = middle
		} else {
			low = middle
		}
	}
	for i := range out {
		out[i] = max(bare[i], min(least[i], low))
	}
	return out
}

func longestMM(texts []string, face scene.Face) (wide float64) {
	for _, text := range texts {
		wide = max(wide, scene.TextWidthMM(text, smallSizeMM, face))
	}
	return wide
}
