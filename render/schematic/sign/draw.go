package sign

import (
	"strconv"

	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
	"fusewright/render/symbol"
)

// Measures of the numbered triangle in mm; a drawing has seldom a hundred.
const (
	DeltaW = 7.4
	DeltaH = 5.4
)

// deltaFoot is from the base of a triangle to the foot of its number.
const deltaFoot = 0.6

var changeColours = map[ChangeKind]scene.RGB{
	Added: adviceBlue, Changed: faultOrange, Removed: dangerRed, Judged: scene.Ink,
}

// DrawChange draws the numbered triangle of a change, its middle at a place:
// added full, changed open, removed on its point, judged anew dashed.
func DrawChange(sheet *scene.Sheet, m *Entry, x, y float64) {
	kind := m.Change.Kind
	colour := changeColours[kind]
	pen, fill, ink := scene.Pen(symbol.LineMM).In(colour), scene.Paint(White), colour
	up, base := 1.0, y+DeltaH/2-deltaFoot
	switch kind {
	case Added:
		fill, ink = scene.Paint(colour), White
	case Removed:
		up, base = -1, y-DeltaH/2+deltaFoot+lettering.CapMM
	case Judged:
		pen = scene.Pen(0.3).Dashed(0.9, 0.6)
	}
	number := strconv.Itoa(m.Number)
	sheet.Begin(scene.Group{ID: sheet.UniqueID("change-" + number), Class: "change",
		Title: "change " + number + ": " + string(kind), Desc: wording.Present(m.Change.statements(), "; ")})
	sheet.Polygon([]scene.Point{{X: x, Y: y - up*DeltaH/2}, {X: x + DeltaW/2, Y: y + up*DeltaH/2},
		{X: x - DeltaW/2, Y: y + up*DeltaH/2}}, &pen, fill)
	sheet.TextAt(scene.Point{X: x, Y: base}, number,
		scene.TextStyle{SizeMM: lettering.SmallMM, Face: scene.Bold, Align: scene.Middle, Colour: ink})
	sheet.End()
}
