// Package column sets lists into the free columns of a sheet: whole, side by
// side, or carried on elsewhere. What the lists say is not its business.
package column

import (
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
)

// Width is the width of a list beside the circuit, in mm.
const Width = 64.0

// WidthM is the room a column of lists takes from the circuit, in modules.
const WidthM = 27

// Row is one entry of a list: its height and how to draw it with its top
// left corner at a place.
type Row struct {
	Height float64
	Draw   func(sheet *scene.Sheet, x, y float64)
}

// List is a list with a heading, in one column or in several side by side.
type List struct {
	Title string
	Whole bool // never in several columns
	// untorn lists are never carried on elsewhere, whole ones neither.
	Untorn   bool
	Findings bool
	Grounds  bool
	Wired    bool // it has to stand somewhere: wires are drawn in it, or nothing else says it
	InFull   bool // the list of everything that others tell in short
	Rows     []Row
	area     scene.Rect // where it stands, set when it is placed
	cuts     []int      // row with which each further column begins
}

const (
	Head = 6.5 // heading with its line, mm
	Gap  = 3.5
	Step = Width + 2 // from column to column
)

// Height is the height in one column.
func (p *List) Height() float64 { return Head + HeightOf(p.Rows) }

// HeightOf is the height of rows one below the other.
func HeightOf(rows []Row) (sum float64) {
	for _, r := range rows {
		sum += r.Height
	}
	return sum
}

// columns are the rows column by column.
func (p *List) columns() (list [][]Row) {
	from := 0
	for _, cut := range append(append([]int{}, p.cuts...), len(p.Rows)) {
		list = append(list, p.Rows[from:cut])
		from = cut
	}
	return list
}

// Paint draws the list at its place.
func (p *List) Paint(sheet *scene.Sheet) {
	sheet.Begin(scene.Group{ID: sheet.UniqueID("list-" + p.Title), Class: "list", Title: p.Title})
	x, y := p.area.X, p.area.Y
	sheet.TextAt(scene.Point{X: x, Y: y + 3}, p.Title, scene.TextStyle{SizeMM: lettering.NormalMM, Face: scene.Bold, Colour: scene.Ink})
	sheet.Line(scene.Point{X: x, Y: y + 4.2}, scene.Point{X: p.area.Right(), Y: y + 4.2}, scene.Pen(0.25))
	for k, rows := range p.columns() {
		low := y + Head
		for _, r := range rows {
			r.Draw(sheet, x+float64(k)*Step, low)
			low += r.Height
		}
	}
	sheet.End()
}

// TextRow is a row of wrapped words after an indent.
func TextRow(words string, indent float64, face scene.Face, colour scene.RGB) Row {
	lines := scene.Wrap(words, lettering.SmallMM, Width-4-indent, face)
	return Row{
		Height: float64(len(lines)) * lettering.LineMM,
		Draw: func(sheet *scene.Sheet, x, y float64) {
			for i, line := range lines {
				sheet.TextAt(scene.Point{X: x + indent, Y: y + lettering.CapMM + float64(i)*lettering.LineMM}, line,
					scene.TextStyle{SizeMM: lettering.SmallMM, Face: face, Colour: colour})
			}
		},
	}
}
