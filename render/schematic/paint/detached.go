package paint

import (
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/symbol"
)

// contactApart draws a relay's contact in its conductor.
func (a *painter) contactApart(c *cell.Cell) {
	y := c.Rows[0].Y
	roof := -1.4
	if c.Geometry.Changeover {
		roof = -3.4
	}
	a.surround(c.Part, a.boxAt(c.X, y, scene.Rect{Y: roof, W: cell.RelayBody, H: 0.3 - roof}))
	a.relayContact(c, a.pen(c.X, y))
	flag := a.Signs.OfPart(c.Part)
	at := a.at(float64(c.X), float64(y))
	left := at.X - float64(c.Lead)*symbol.M + 0.5
	if len(c.Inlets) > 1 {
		left = at.X + 0.4
	}
	text := a.mated(c, "coil ")
	right := at.X + cell.RelayBody*symbol.M - 0.5
	a.caption(text, centred(text, at.X+cell.RelayBody/2*symbol.M, left, right), at.Y+cell.CaptionBase(0.25, a.Signs.DropFor(flag)))
}

// coilApart draws a relay's coil with its suppressor and returns.
func (a *painter) coilApart(c *cell.Cell) {
	y := c.Rows[0].Y
	a.surround(c.Part, a.boxAt(c.X, y, cell.CoilBody(c.Geometry)))
	a.Set.Symbol(symbol.Coil).Draw(a.pen(c.X+2, y), "")
	p := a.pen(c.X, y)
	p.Line(0, 0, 2, 0)
	p.Line(6, 0, cell.RelayBody, 0)
	a.terminal(c.X, y, 0.35, "86", scene.Left)
	a.terminal(c.X+cell.RelayBody, y, -0.35, "85", scene.Right)
	if k := c.Geometry.Suppressor; k != "" {
		p.Line(1, 0, 1, 2.5, 2, 2.5)
		p.Line(6, 2.5, 7, 2.5, 7, 0)
		p.Dot(1, 0)
		p.Dot(7, 0)
		a.Set.Symbol(k).Draw(symbol.NewPen(a.sheet, a.at(float64(c.X+2), float64(y)+2.5)), "")
	}
	a.endOf(c, cell.CoilBody(c.Geometry), a.mated(c, "contact "))
}

// mated is a caption with the place of the other half filled in.
func (a *painter) mated(c *cell.Cell, word string) lettering.Caption {
	text := c.Caption
	text.Lines = append([]string{}, text.Lines...)
	text.Lines[text.Mate] = word + a.sheets.Where(c.Mate)
	return text
}
