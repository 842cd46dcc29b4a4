package layout

import (
	"fusewright/harness/design/quantity"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// gridColumn is a column of a table.
type gridColumn struct {
	head  string
	wide  float64 // share of the width, by what stands in it
	align scene.Align
	face  scene.Face
}

// grid is a table with a heading. A single column without a head holds paragraphs.
type grid struct {
	title   string
	columns []gridColumn
	rows    [][]string
}

// flow puts tables into areas one after the other and asks for the next sheet
// when they are full.
type flow struct {
	sheet *scene.Sheet
	slots []scene.Rect // the first is being filled from the top
	next  func() (*scene.Sheet, []scene.Rect)
}

// Measures of tables in millimetres.
const (
	titleDown = 3.0  // to the baseline of a heading
	titleStep = 4.6  // to the row of heads
	gridGap   = 2.0  // after a table
	leastMM   = 32.0 // a table that is higher does not begin in less
	cellPad   = 0.8
	clearMM   = 1.6 // from figures to the text beside them
)

func (f *flow) advance() {
	if len(f.slots) > 1 {
		f.slots = f.slots[1:]
		return
	}
	f.sheet, f.slots = f.next()
}

// share gives the columns the widths at which the rows take the fewest lines; none is
// narrower than its longest word.
func (g *grid) share(w float64) {
	least, cells := make([]float64, len(g.columns)), make([][]float64, len(g.rows)+1)
	for i, c := range g.columns {
		edge := 2*cellPad + 0.5
		if c.align == scene.Right {
			edge += clearMM
		}
		measure := func(text string, face scene.Face) float64 { return scene.TextWidthMM(text, frame.SmallMM, face) + edge }
		for _, word := range quantity.Words(c.head) {
			least[i] = max(least[i], measure(word, scene.Italic))
		}
		cells[len(g.rows)] = append(cells[len(g.rows)], measure(c.head, scene.Italic))
		for k, row := range g.rows {
			cells[k] = append(cells[k], measure(row[i], c.face))
			for _, word := range quantity.Words(row[i]) {
				least[i] = max(least[i], measure(word, c.face))
			}
		}
	}
	for i, wide := range scene.ColumnWidths(cells, least, w) {
		g.columns[i].wide = wide
	}
}

// put lays a table, over as many areas as it needs.
func (f *flow) put(g *grid) {
	if g == nil || len(g.rows) == 0 {
		return
	}
	g.share(f.slots[0].W)
	for range 4 { // a fresh sheet always has room
		if f.slots[0].H >= min(g.height(f.slots[0].W), leastMM) {
			break
		}
		f.advance()
	}
	title, open := g.title, false
	for _, row := range g.rows {
		w := f.slots[0].W
		cells, high := g.fold(row, w, scene.Regular)
		if open && f.slots[0].H < high {
			f.advance()
			open, title = false, g.title+", continued"
		}
		if !open {
			f.head(g, title)
			open = true
			cells, high = g.fold(row, f.slots[0].W, scene.Regular)
		}
		f.row(g, cells, high, scene.Regular)
	}
	f.down(gridGap)
}

func (g *grid) headed() bool { return g.columns[0].head != "" }

// height is that of the whole table.
func (g *grid) height(w float64) float64 {
	sum := titleStep + 0.6
	if g.headed() {
		sum += 2 * frame.LineMM
	}
	for _, row := range g.rows {
		_, high := g.fold(row, w, scene.Regular)
		sum += high
	}
	return sum
}

// down takes a height off the area.
func (f *flow) down(mm float64) {
	s := &f.slots[0]
	s.Y, s.H = s.Y+mm, s.H-mm
}

func (f *flow) head(g *grid, title string) {
	s := f.slots[0]
	f.sheet.TextAt(scene.Point{X: s.X, Y: s.Y + titleDown},
		scene.Ellipsis(title, frame.NormalMM, s.W, scene.Bold),
		scene.TextStyle{SizeMM: frame.NormalMM, Face: scene.Bold, Colour: scene.Ink})
	f.down(titleStep)
	f.rule(0.35)
	if !g.headed() {
		f.down(0.6)
		return
	}
	heads := make([]string, len(g.columns))
	for i, c := range g.columns {
		heads[i] = c.head
	}
	cells, high := g.fold(heads, s.W, scene.Italic)
	f.row(g, cells, high, scene.Italic)
}

// rule draws a line over the width of the area at its top.
func (f *flow) rule(widthMM float64) {
	s := f.slots[0]
	f.sheet.Line(scene.Point{X: s.X, Y: s.Y}, scene.Point{X: s.X + s.W, Y: s.Y}, scene.Pen(widthMM))
}

func (g *grid) at(i int, w float64) (x, wide float64) {
	sum := 0.0
	for _, c := range g.columns {
		sum += c.wide
	}
	for _, c := range g.columns[:i] {
		x += c.wide / sum * w
	}
	return x, g.columns[i].wide / sum * w
}

// fold wraps the cells of a row and gives its height.
func (g *grid) fold(row []string, w float64, face scene.Face) (cells [][]string, high float64) {
	lines := 1
	for i, text := range row {
		_, wide := g.at(i, w)
		cells = append(cells, scene.Wrap(text, frame.SmallMM, wide-2*cellPad, g.face(i, face)))
		lines = max(lines, len(cells[i]))
	}
	return cells, float64(lines)*frame.LineMM + 0.9
}

func (g *grid) face(i int, face scene.Face) scene.Face {
	if face == scene.Regular {
		return g.columns[i].face
	}
	return face
}

func (f *flow) row(g *grid, cells [][]string, high float64, face scene.Face) {
	s := f.slots[0]
	for i, lines := range cells {
		x, wide := g.at(i, s.W)
		at, align := s.X+x+cellPad, g.columns[i].align
		if align == scene.Right {
			at = s.X + x + wide - cellPad - clearMM
		}
		for n, line := range lines {
			size := scene.FitSizeMM(line, frame.SmallMM, frame.SmallMM/2, wide-2*cellPad, g.face(i, face)) // a quantity is not torn
			f.sheet.TextAt(scene.Point{X: at, Y: s.Y + 2.95 + frame.LineMM*float64(n)}, line,
				scene.TextStyle{SizeMM: size, Face: g.face(i, face), Align: align, Colour: scene.Ink})
		}
	}
	f.down(high)
	if g.headed() {
		f.rule(0.13)
	}
}
