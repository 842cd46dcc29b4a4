package schematic

import (
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// contactApart draws a relay's contact in its conductor.
func (a *painter) contactApart(c *cell) {
	y := c.rows[0].y
	roof := -1.4
	if c.geometry.changeover {
		roof = -3.4
	}
	a.surround(c.part, a.boxAt(c.x, y, scene.Rect{Y: roof, W: relayBody, H: 0.3 - roof}))
	a.relayContact(c, a.pen(c.x, y))
	flag := a.signs.ofPart(c.part)
	at := a.at(float64(c.x), float64(y))
	left := at.X - float64(c.lead)*symbol.M + 0.5
	if len(c.inlets) > 1 {
		left = at.X + 0.4
	}
	text := a.mated(c, "coil ")
	right := at.X + relayBody*symbol.M - 0.5
	a.caption(text, centred(text, at.X+relayBody/2*symbol.M, left, right), at.Y+captionBase(0.25, a.signs.dropFor(flag)))
}

// coilApart draws a relay's coil with its suppressor and returns.
func (a *painter) coilApart(c *cell) {
	y := c.rows[0].y
	a.surround(c.part, a.boxAt(c.x, y, coilBody(c.geometry)))
	a.set.Symbol(symbol.Coil).Draw(a.pen(c.x+2, y), "")
	p := a.pen(c.x, y)
	p.Line(0, 0, 2, 0)
	p.Line(6, 0, relayBody, 0)
	a.terminal(c.x, y, 0.35, "86", scene.Left)
	a.terminal(c.x+relayBody, y, -0.35, "85", scene.Right)
	if k := c.geometry.suppressor; k != "" {
		p.Line(1, 0, 1, 2.5, 2, 2.5)
		p.Line(6, 2.5, 7, 2.5, 7, 0)
		p.Dot(1, 0)
		p.Dot(7, 0)
		a.set.Symbol(k).Draw(symbol.NewPen(a.sheet, a.at(float64(c.x+2), float64(y)+2.5)), "")
	}
	a.endOf(c, coilBody(c.geometry), a.mated(c, "contact "))
}

// mated is a caption with the place of the other half filled in.
func (a *painter) mated(c *cell, word string) caption {
	text := c.caption
	text.lines = append([]string{}, text.lines...)
	text.lines[text.mate] = word + a.sheets.where(c.mate)
	return text
}
