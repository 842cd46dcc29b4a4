package paint

import (
	"fmt"

	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/crossref"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/route"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// painter draws one page.
type painter struct {
	*labels.Labels
	sheets *crossref.Sheets
	on     *arrange.Page
	sheet  *scene.Sheet
	field  scene.Rect
	spots  *spots // nil on paper
}

func newPainter(s *crossref.Sheets, p *arrange.Page, sheet *scene.Sheet) *painter {
	return &painter{Labels: s.Labels, sheets: s, on: p, sheet: sheet, field: s.Field}
}

// page draws the circuit of the page: lines, then parts, then the outlines of places.
func (a *painter) page() {
	a.on.TraceLines()
	a.sheets.LabelRooms(a.on)
	for _, l := range a.on.Lines {
		a.wire(l)
	}
	for _, c := range a.on.Cells {
		a.cell(c)
	}
	if a.Outlined {
		for _, frame := range a.sheets.Frames(a.on) {
			a.placeBox(frame)
		}
	}
}

// at turns modules on the page into mm on the sheet.
func (a *painter) at(x, y float64) scene.Point {
	return scene.Point{X: a.field.X + x*symbol.M, Y: a.field.Y + y*symbol.M}
}

func (a *painter) spot(s route.Spot) scene.Point { return a.at(float64(s.X), float64(s.Y)) }

// pen draws about a point of the page, in modules.
func (a *painter) pen(x, y int) *symbol.Pen {
	return symbol.NewPen(a.sheet, a.at(float64(x), float64(y)))
}

// wirePen draws conductors about a point of the page.
func (a *painter) wirePen(x, y int) *symbol.Pen {
	p := a.pen(x, y)
	p.WidthM = symbol.WireMM
	return p
}

// text writes small text with its baseline at a place in mm.
func (a *painter) text(x, y float64, s string, face scene.Face, align scene.Align, colour scene.RGB) {
	a.sheet.TextAt(scene.Point{X: x, Y: y}, s, scene.TextStyle{SizeMM: lettering.SmallMM, Face: face, Align: align, Colour: colour})
}

// caption writes a part's text: a flag if it has one, the bold reference, the
// words. left is the left edge, base the first baseline, in mm.
func (a *painter) caption(c lettering.Caption, left, base float64) {
	if a.Signs.Hidden {
		c.Sign, c.Wide = 0, 0
	}
	if c.Sign > 0 {
		a.flag(c.Sign, left+c.Wide/2-0.3, base-sign.Rise)
	}
	a.spots.box(c.Ref, scene.Rect{X: left, Y: base - lettering.CapMM, W: c.Width(), H: float64(len(c.Lines)-1)*lettering.LineMM + lettering.CapMM})
	for i, line := range c.Lines {
		x := left
		if i == 0 && c.Ref != "" {
			a.Marks.Label(c.Ref, wordBox(left+c.Wide, base, c.Ref, scene.Bold))
			a.text(left+c.Wide, base, c.Ref, scene.Bold, scene.Left, scene.Ink)
		}
		if i == 0 {
			x += c.Indent()
		}
		face, colour := c.Face(i)
		a.text(x, base+float64(i)*lettering.LineMM, line, face, scene.Left, colour)
	}
}

// captionAtop writes the caption over an outline whose corner is given in mm.
func (a *painter) captionAtop(c lettering.Caption, corner scene.Point, flag int) {
	base := corner.Y - lettering.GapMM - float64(len(c.Lines)-1)*lettering.LineMM
	if flag > 0 {
		base -= sign.Above
	}
	a.caption(c, corner.X, base)
}

// centred gives the left edge of a caption centred on x, kept between two
// edges; all in mm.
func centred(c lettering.Caption, x, left, right float64) float64 {
	w := c.Width()
	return max(left, min(x-w/2, right-w))
}

// cell draws a cell in a group of its own.
func (a *painter) cell(c *cell.Cell) {
	switch {
	case c.Empty, c.Kind == cell.Pass, c.Kind == cell.Blank:
		return
	case c.Kind == cell.In:
		a.incoming(c)
		return
	case c.Kind == cell.Out:
		a.outgoing(c)
		return
	}
	words, details := a.WordsOf(c.Part)
	id := c.Part.Ref
	if c.Pieces > 1 {
		id = fmt.Sprintf("%s-%d", id, c.Piece)
	}
	switch {
	case c.Coil:
		id, words = id+"-coil", words+", coil"
	case c.Mate != nil:
		id, words = id+"-contact", words+", contact"
	}
	a.sheet.Begin(scene.Group{
		ID: a.sheet.UniqueID("part-" + id), Class: "part",
		Title: wording.Present([]string{c.Part.Ref, words}, " "),
		Link:  a.sheets.LinkToSheet(c.Mate), Of: c.Part.Ref,
		Desc: wording.Present([]string{string(c.Part.Kind), details, placeWords(c)}, ", "),
	})
	switch {
	case len(c.Ways) > 0 || c.Pieces > 0:
		a.block(c)
	case c.Part.Kind == "battery":
		a.source(c)
	case c.Coil:
		a.coilApart(c)
	case c.Mate != nil:
		a.contactApart(c)
	case c.Part.Kind == "relay":
		a.relay(c)
	case c.Ends():
		a.load(c)
	default:
		a.inline(c)
	}
	a.sheet.End()
}

func placeWords(c *cell.Cell) string {
	if c.Part.Place == nil {
		return ""
	}
	return "at " + c.Part.Place.Name
}
