package schematic

import (
	"fmt"

	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// painter draws one page.
type painter struct {
	*labels
	sheets *sheets
	on     *page
	sheet  *scene.Sheet
	field  scene.Rect
}

func newPainter(s *sheets, p *page, sheet *scene.Sheet) *painter {
	return &painter{s.labels, s, p, sheet, s.paper.field()}
}

// page draws the circuit of the page: bands under everything, then lines, then
// parts, then the outlines of places.
func (a *painter) page() {
	a.on.traceLines()
	a.sheets.labelRooms(a.on)
	a.bands()
	for _, l := range a.on.lines {
		a.wire(l)
	}
	for _, c := range a.on.cells {
		a.cell(c)
	}
	a.placeBoxes()
}

// at turns modules on the page into mm on the sheet.
func (a *painter) at(x, y float64) scene.Point {
	return scene.Point{X: a.field.X + x*symbol.M, Y: a.field.Y + y*symbol.M}
}

func (a *painter) spot(s spot) scene.Point { return a.at(float64(s.x), float64(s.y)) }

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
	a.sheet.TextAt(scene.Point{X: x, Y: y}, s, scene.TextStyle{SizeMM: smallMM, Face: face, Align: align, Colour: colour})
}

// caption writes a part's text: a flag if it has one, the bold reference, the
// words. left is the left edge, base the first baseline, in mm.
func (a *painter) caption(c caption, left, base float64) {
	if c.sign > 0 {
		a.flag(c.sign, left+c.wide/2-0.3, base-a.signs.rise)
	}
	for i, line := range c.lines {
		x := left
		if i == 0 && c.ref != "" {
			a.text(left+c.wide, base, c.ref, scene.Bold, scene.Left, scene.Ink)
		}
		if i == 0 {
			x += c.indent()
		}
		face, colour := c.face(i)
		a.text(x, base+float64(i)*lineMM, line, face, scene.Left, colour)
	}
}

// captionAtop writes the caption over an outline whose corner is given in mm.
func (a *painter) captionAtop(c caption, corner scene.Point, flag int) {
	base := corner.Y - gapMM - float64(len(c.lines)-1)*lineMM
	if flag > 0 {
		base -= a.signs.above
	}
	if flag > 0 && a.signs.atop {
		a.flag(flag, corner.X+a.signs.wide/2-0.2, base-capMM-0.5-a.signs.half)
	}
	a.caption(c, corner.X, base)
}

// centred gives the left edge of a caption centred on x, kept between two
// edges; all in mm.
func centred(c caption, x, left, right float64) float64 {
	w := c.width()
	return max(left, min(x-w/2, right-w))
}

// cell draws a cell in a group of its own.
func (a *painter) cell(c *cell) {
	switch c.kind {
	case passCell, blankCell:
		return
	case inCell:
		a.incoming(c)
		return
	case outCell:
		a.outgoing(c)
		return
	}
	words, details := a.wordsOf(c.part)
	id := c.part.Ref
	if c.pieces > 1 {
		id = fmt.Sprintf("%s-%d", id, c.piece)
	}
	switch {
	case c.coil:
		id, words = id+"-coil", words+", coil"
	case c.mate != nil:
		id, words = id+"-contact", words+", contact"
	}
	a.sheet.Begin(scene.Group{
		ID: a.sheet.UniqueID("part-" + id), Class: "part",
		Title: wording.Present([]string{c.part.Ref, words}, " "),
		Link:  a.sheets.linkToMate(c),
		Desc:  wording.Present([]string{string(c.part.Kind), details, placeWords(c)}, ", "),
	})
	switch {
	case len(c.ways) > 0 || c.pieces > 0:
		a.block(c)
	case c.part.Kind == "battery":
		a.source(c)
	case c.coil:
		a.coilApart(c)
	case c.mate != nil:
		a.contactApart(c)
	case c.part.Kind == "relay":
		a.relay(c)
	case c.part.Kind == "load":
		a.load(c)
	default:
		a.inline(c)
	}
	a.sheet.End()
}

func placeWords(c *cell) string {
	if c.part.Place == nil {
		return ""
	}
	return "at " + c.part.Place.Name
}
