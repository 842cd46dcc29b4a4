package schematic

import (
	"strconv"

	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// Measures of the numbered triangle in mm; a drawing has seldom a hundred.
const (
	deltaW = 7.4
	deltaH = 5.4
)

// deltaFoot is from the base of a triangle to the foot of its number.
const deltaFoot = 0.6

var changeColours = map[ChangeKind]scene.RGB{
	Added: adviceBlue, Changed: faultOrange, Removed: dangerRed, Judged: scene.Ink,
}

// drawDelta draws the numbered triangle of a change, its middle at a place:
// added full, changed open, removed on its point, judged anew dashed.
func drawDelta(sheet *scene.Sheet, m *marked, x, y float64) {
	kind := m.change.Kind
	colour := changeColours[kind]
	pen, fill, ink := scene.Pen(symbol.LineMM).In(colour), scene.Paint(white), colour
	up, base := 1.0, y+deltaH/2-deltaFoot
	switch kind {
	case Added:
		fill, ink = scene.Paint(colour), white
	case Removed:
		up, base = -1, y-deltaH/2+deltaFoot+capMM
	case Judged:
		pen = scene.Pen(0.3).Dashed(0.9, 0.6)
	}
	number := strconv.Itoa(m.number)
	sheet.Begin(scene.Group{ID: sheet.UniqueID("change-" + number), Class: "change",
		Title: "change " + number + ": " + string(kind), Desc: wording.Present(m.change.statements(), "; ")})
	sheet.Polygon([]scene.Point{{X: x, Y: y - up*deltaH/2}, {X: x + deltaW/2, Y: y + up*deltaH/2},
		{X: x - deltaW/2, Y: y + up*deltaH/2}}, &pen, fill)
	sheet.TextAt(scene.Point{X: x, Y: base}, number,
		scene.TextStyle{SizeMM: smallMM, Face: scene.Bold, Align: scene.Middle, Colour: ink})
	sheet.End()
}
