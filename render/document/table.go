package document

import (
	"fusewright/render/scene"
)

// column is one column of a table.
type column struct {
	head  string
	wide  float64 // share of the table's width
	align scene.Align
	face  scene.Face
	first bool // a box at the left of the table
}

// padMM is the space at both sides of a cell.
const padMM = 0.9

// table is a table being written on a book; its head is repeated on each page.
type table struct {
	book    *book
	columns []column
	indent  float64 // from the book's left edge, mm
	width   float64
	sum     float64
	rowTop  float64 // of the row written last
	inGroup string  // heading of the rows being written
	due     string  // heading that waits for its first row
	leastMM float64 // least height of a row, where something is written in by hand
}

// tableAt is a table of a place and width, without its head.
func (b *book) tableAt(left, width float64, columns []column) *table {
	t := &table{book: b, columns: columns, indent: left - b.left(), width: width}
	for _, c := range columns {
		t.sum += c.wide
	}
	return t
}

// left is the table's left edge in the text column being filled.
func (t *table) left() float64 { return t.book.left() + t.indent }

// at gives the left edge and width of a column.
func (t *table) at(i int) (x, w float64) {
	x = t.left()
	for _, c := range t.columns[:i] {
		x += c.wide / t.sum * t.width
	}
	return x, t.columns[i].wide / t.sum * t.width
}

func (t *table) head() {
	cells, high := t.heads(scene.Bold)
	b := t.book
	b.sheet().Rect(scene.Rect{X: t.left(), Y: b.y, W: t.width, H: high}, nil, scene.Paint(pale))
	t.write(cells, smallSizeMM, scene.Bold)
	b.y += high
	t.rule(thinMM)
}

func (t *table) heads(face scene.Face) (cells [][]string, high float64) {
	texts := make([]string, len(t.columns))
	for i, c := range t.columns {
		texts[i] = c.head
	}
	return t.fold(texts, smallSizeMM, face)
}

// fold wraps cells and gives the height of the row.
func (t *table) fold(texts []string, sizeMM float64, face scene.Face) (cells [][]string, high float64) {
	for i, text := range texts {
		_, w := t.at(i)
		f := face
		if f == scene.Regular {
			f = t.columns[i].face
		}
		cells = append(cells, t.book.wrap(text, sizeMM, w-2*padMM, f))
	}
	return cells, t.book.rowMM(cells, sizeMM)
}

// rowEdgeMM is the space above and below the lines of a row, tightEdgeMM that of rows
// closer together.
const rowEdgeMM, tightEdgeMM = 1.1, 0.6

func (b *book) rowEdgeMM() float64 {
	if b.tight {
		return tightEdgeMM
	}
	return rowEdgeMM
}

// rowMM is the height of a row of folded cells.
func (b *book) rowMM(cells [][]string, sizeMM float64) float64 {
	return float64(lineCount(cells))*scene.LineHeightMM(sizeMM) + b.rowEdgeMM()
}

// lineCount is the number of lines of the longest cell, at least one.
func lineCount(cells [][]string) int {
	lines := 1
	for _, cell := range cells {
		lines = max(lines, len(cell))
	}
	return lines
}

// partRow parts a row into pieces of at most so many lines, so that a cell
// longer than a page goes on upon the next.
func partRow(cells [][]string, most int) [][][]string {
	most = max(most, 1)
	var pieces [][][]string
	for from, lines := 0, lineCount(cells); from < lines; from += most {
		piece := make([][]string, len(cells))
		for i, cell := range cells {
			piece[i] = cell[min(from, len(cell)):min(from+most, len(cell))]
		}
		pieces = append(pieces, piece)
	}
	return pieces
}

// write sets the folded cells at the book's place.
func (t *table) write(cells [][]string, sizeMM float64, face scene.Face) {
	for i, lines := range cells {
		x, w := t.at(i)
		c := t.columns[i]
		style := scene.TextStyle{SizeMM: sizeMM, Face: face, Align: c.align, Colour: ink}
		if face == scene.Regular {
			style.Face = c.face
		}
		at := x + padMM
		switch c.align {
		case scene.Right:
			at = x + w - padMM
		case scene.Middle:
			at = x + w/2
		}
		y := t.book.y + t.book.rowEdgeMM()/2 + scene.AscentMM(sizeMM, style.Face)
		for _, line := range lines {
			style.SizeMM = scene.FitSizeMM(line, sizeMM, sizeMM/2, w-2*padMM, style.Face) // a quantity is not torn
			t.book.sheet().TextAt(scene.Point{X: at, Y: y}, line, style)
			y += scene.LineHeightMM(sizeMM)
		}
	}
}

// row writes one row, on the next page when it does not fit; one higher than a
// page is parted.
func (t *table) row(texts ...string) {
	cells, _ := t.fold(texts, smallSizeMM, scene.Regular)
	for _, piece := range partRow(cells, t.mostLines()) {
		t.piece(piece)
	}
}

// mostLines is how many lines a row may have on a page of its own, below a head
// of up to three lines and a heading.
func (t *table) mostLines() int {
	b := t.book
	line := scene.LineHeightMM(smallSizeMM)
	return int((b.pageBottom() - marginMM - headingMM - 3*line - groupMM - 2*b.rowEdgeMM()) / line)
}

func (t *table) piece(cells [][]string) {
	high := t.book.rowMM(cells, smallSizeMM)
	free := max(0, t.leastMM-high)
	if t.due != "" {
		t.room(t.groupHigh(t.due) + high + free)
		t.groupHead(t.due)
		t.inGroup, t.due = t.due, ""
	}
	t.room(high + free)
	t.rowTop = t.book.y
	t.book.y += free / 2
	t.write(cells, smallSizeMM, scene.Regular)
	t.book.y += high + free/2
	t.rule(hairMM)
}

// group begins rows under a heading across all columns, which is written with
// the first of them.
func (t *table) group(text string) {
	t.inGroup, t.due = "", text // a heading that moves to the next page is not continued
}

// groupMM is the height of such a heading of one line, tightGroupMM that of rows closer
// together.
const groupMM, tightGroupMM = 5.6, 5.0

// groupHigh is the height of such a heading, on more lines when it is long.
func (t *table) groupHigh(text string) float64 {
	high := groupMM
	if t.book.tight {
		high = tightGroupMM
	}
	return high + float64(len(t.groupLines(text))-1)*scene.LineHeightMM(textSizeMM)
}

func (t *table) groupLines(text string) []string {
	return t.book.wrap(text, textSizeMM, t.width-2*padMM, scene.Bold)
}

func (t *table) groupHead(text string) {
	b := t.book
	for i, line := range t.groupLines(text) {
		b.sheet().TextAt(scene.Point{X: b.left() + padMM, Y: b.y + t.groupHigh(text) - 1.6 - float64(len(t.groupLines(text))-1-i)*scene.LineHeightMM(textSizeMM)}, line, bold)
	}
	b.y += t.groupHigh(text)
	t.rule(hairMM)
}

// room begins a new page with a new head when the height does not fit.
func (t *table) room(high float64) {
	if t.book.y+high > t.book.bottom() {
		t.book.next()
		t.head()
		if t.inGroup != "" {
			t.groupHead(t.inGroup + ", continued")
		}
	}
}

// tick draws an empty box in a column of the row just written.
func (t *table) tick(col int) {
	x, w := t.at(col)
	r := scene.Rect{X: x + w/2 - 1.4, Y: t.rowTop + max((t.book.rowEdgeMM()+scene.LineHeightMM(smallSizeMM))/2-1.4, t.leastMM/2-1.4), W: 2.8, H: 2.8}
	pen := scene.Pen(thinMM)
	t.book.sheet().Rect(r, &pen, nil)
}

// rule draws a line over the whole width at the book's place; hair lines
// between rows are grey, so that they guide the eye without fencing it in.
func (t *table) rule(widthMM float64) {
	pen := scene.Pen(widthMM)
	if widthMM < thinMM {
		pen = pen.In(faint)
	}
	b := t.book
	b.sheet().Line(scene.Point{X: t.left(), Y: b.y}, scene.Point{X: t.left() + t.width, Y: b.y}, pen)
}
