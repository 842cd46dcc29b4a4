package paint

import (
	"fusewright/render/scene"
	"fusewright/render/schematic/legend"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/sign"
)

// Long draws a circuit without frame and lists, its pages one below the other, cut to what is
// drawn, with the spots under it: for a page on a screen. Of the lists it has that of the
// grounds below it, where wires are drawn in it.
func (d *Drawing) Long() *scene.Sheet {
	d.Labels.Spots = sign.NewSpots()
	sheet := scene.NewSheet(d.Paper.W, d.Paper.H, "schematic")
	var all scene.Rect
	for _, page := range d.Pages {
		p := newPainter(d.Sheets, page, sheet)
		p.field.Y += all.Bottom()
		p.page()
		all = sheet.Bounds()
	}
	for _, list := range legend.GroundWires(d.Sheets, scene.Point{X: all.X, Y: all.Bottom() + 2*lettering.LineMM}, all.W) {
		list.Paint(sheet)
	}
	all = sheet.Bounds().Grow(lettering.LineMM)
	sheet.WidthMM, sheet.HeightMM = all.Right(), all.Bottom() // of the paper only what is drawn on
	d.Signs.Further(sheet, d.Labels.Spots.Boxes)
	under := scene.NewSheet(d.Paper.W, d.Paper.H, "")
	d.Labels.Spots.Draw(under)
	sheet.Under(0, under)
	return sheet.Trimmed(lettering.LineMM)
}
