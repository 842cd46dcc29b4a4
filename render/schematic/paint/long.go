package paint

import (
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
)

// Long draws a circuit that was laid out on one page without frame and lists, cut to what is
// drawn, with the spots under it: for a page on a screen.
func (d *Drawing) Long() *scene.Sheet {
	sheet := scene.NewSheet(d.Paper.W, d.Paper.H, "schematic")
	p := newPainter(d.Sheets, d.Pages[0], sheet)
	p.spots = newSpots()
	p.page()
	all := sheet.Bounds().Grow(lettering.LineMM)
	sheet.WidthMM, sheet.HeightMM = all.Right(), all.Bottom() // of the paper only what is drawn on
	d.Signs.Further(sheet, p.spots.boxes)
	under := scene.NewSheet(d.Paper.W, d.Paper.H, "")
	p.spots.draw(under)
	sheet.Under(0, under)
	return sheet.Trimmed(lettering.LineMM)
}
