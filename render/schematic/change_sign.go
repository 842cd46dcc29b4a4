package schematic

import (
	"slices"
	"strconv"

	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// signPanel explains the signs of the kinds of changes that there are.
func (l *lists) signPanel() *panel {
	out := &panel{title: "Signs of changes", whole: true}
	for _, k := range []struct {
		kind  ChangeKind
		words string
	}{
		{Added, "added; plain frame or band"},
		{Changed, "changed; cloud or broken band"},
		{Removed, "removed; crosses"},
		{Judged, "not changed, but new findings"},
	} {
		used := l.signs.changes != nil && slices.ContainsFunc(l.signs.changes.List, func(c Change) bool { return c.Kind == k.kind })
		if !used {
			continue
		}
		m := &marked{number: len(out.rows) + 1, change: &Change{Kind: k.kind}}
		words := textRow(k.words, m.indent(), scene.Regular, scene.Ink)
		out.rows = append(out.rows, panelRow{height: deltaH + 0.8, draw: func(sheet *scene.Sheet, x, y float64) {
			drawDelta(sheet, m, x+deltaW/2, y+deltaH/2-1)
			words.draw(sheet, x, y+deltaH/2-1-capMM/2)
		}})
	}
	if len(out.rows) == 0 {
		return nil
	}
	return out
}

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
