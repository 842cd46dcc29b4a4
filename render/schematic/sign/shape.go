package sign

import (
	"slices"
	"strconv"

	"fusewright/harness/review/finding"
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
)

// drawShape draws the sign of a finding for a screen, its middle at a place: danger a full
// diamond, fault a full square, advice an open circle, accepted a dashed one.
func drawShape(sheet *scene.Sheet, m *Entry, f *finding.Finding, x, y float64) {
	r := Radius
	ring, fill, ink := scene.Pen(0.3).In(adviceBlue), scene.Paint(White), adviceBlue
	number := strconv.Itoa(f.Number)
	sheet.Begin(scene.Group{ID: sheet.UniqueID("flag-" + number), Class: "finding " + f.Severity.String(),
		Title: "finding " + number + ": " + f.Rule, Desc: f.What, Of: m.Refs[0]})
	switch {
	case f.Accepted != "":
		ring, ink = scene.Pen(0.3).Dashed(0.9, 0.6), scene.Ink
		sheet.Circle(scene.Point{X: x, Y: y}, r, &ring, fill)
	case f.Severity == finding.Danger:
		r, ink = r+0.6, White
		sheet.Polygon([]scene.Point{{X: x, Y: y - r}, {X: x + r, Y: y}, {X: x, Y: y + r}, {X: x - r, Y: y}}, nil, scene.Paint(dangerRed))
	case f.Severity == finding.Fault:
		r, ink = r-0.2, White
		sheet.Rect(scene.Rect{X: x - r, Y: y - r, W: 2 * r, H: 2 * r}, nil, scene.Paint(faultOrange))
	default:
		sheet.Circle(scene.Point{X: x, Y: y}, r, &ring, fill)
	}
	size := lettering.SmallMM
	if f.Number > 9 {
		size *= 0.8
	}
	sheet.TextAt(scene.Point{X: x, Y: y + scene.CapHeightMM(size, scene.Bold)/2}, number,
		scene.TextStyle{SizeMM: size, Face: scene.Bold, Align: scene.Middle, Colour: ink})
	sheet.End()
}

// Further puts the signs of all further findings of parts and wires on a finished sheet,
// where it has room near their areas.
func (f *Signs) Further(sheet *scene.Sheet, areas map[string][]scene.Rect) {
	room := spaceOn(sheet, sheet.Items, []scene.Rect{{W: sheet.WidthMM, H: sheet.HeightMM}})
	for _, m := range f.List {
		for _, one := range m.Findings[1:] {
			for _, r := range slices.Backward(areas[m.Refs[0]]) { // the words' first
				if spot, _, ok := room.nearest([]scene.Point{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.Right(), Y: r.Bottom()}, {X: r.X, Y: r.Bottom()}, {X: r.X, Y: r.Y}}); ok {
					drawShape(sheet, m, one, spot.Centre().X, spot.Centre().Y)
					room.signs = append(room.signs, spot)
					break
				}
			}
		}
	}
}
