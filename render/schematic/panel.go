package schematic

import (
	"fusewright/render/scene"
)

// panelW is the width of a list beside the circuit, in mm.
const panelW = 64.0

// panelM is the room a column of lists takes from the circuit, in modules.
const panelM = 27

// panelRow is one entry of a list: its height and how to draw it with its top
// left corner at a place.
type panelRow struct {
	height float64
	draw   func(sheet *scene.Sheet, x, y float64)
}

// panel is a list with a heading, in one column or in several side by side.
type panel struct {
	title string
	whole bool // never in several columns
	// untorn lists are never carried on elsewhere, whole ones neither.
	untorn   bool
	findings bool
	grounds  bool
	inFull   bool // the list of everything that others tell in short
	rows     []panelRow
	area     scene.Rect // where it stands, set when it is placed
	cuts     []int      // row with which each further column begins
}

const (
	panelHead = 6.5 // heading with its line, mm
	panelGap  = 3.5
	panelStep = panelW + 2 // from column to column
)

// height is the height in one column.
func (p *panel) height() float64 { return panelHead + heightOf(p.rows) }

func heightOf(rows []panelRow) (sum float64) {
	for _, r := range rows {
		sum += r.height
	}
	return sum
}

// columns are the rows column by column.
func (p *panel) columns() (list [][]panelRow) {
	from := 0
	for _, cut := range append(append([]int{}, p.cuts...), len(p.rows)) {
		list = append(list, p.rows[from:cut])
		from = cut
	}
	return list
}

// paint draws the list at its place.
func (p *panel) paint(sheet *scene.Sheet) {
	sheet.Begin(scene.Group{ID: sheet.UniqueID("list-" + p.title), Class: "list", Title: p.title})
	x, y := p.area.X, p.area.Y
	sheet.TextAt(scene.Point{X: x, Y: y + 3}, p.title, scene.TextStyle{SizeMM: normalMM, Face: scene.Bold, Colour: scene.Ink})
	sheet.Line(scene.Point{X: x, Y: y + 4.2}, scene.Point{X: p.area.Right(), Y: y + 4.2}, scene.Pen(0.25))
	for k, rows := range p.columns() {
		low := y + panelHead
		for _, r := range rows {
			r.draw(sheet, x+float64(k)*panelStep, low)
			low += r.height
		}
	}
	sheet.End()
}

// textRow is a row of wrapped words after an indent.
func textRow(words string, indent float64, face scene.Face, colour scene.RGB) panelRow {
	lines := scene.Wrap(words, smallMM, panelW-4-indent, face)
	return panelRow{
		height: float64(len(lines)) * lineMM,
		draw: func(sheet *scene.Sheet, x, y float64) {
			for i, line := range lines {
				sheet.TextAt(scene.Point{X: x + indent, Y: y + capMM + float64(i)*lineMM}, line,
					scene.TextStyle{SizeMM: smallMM, Face: face, Colour: colour})
			}
		},
	}
}
