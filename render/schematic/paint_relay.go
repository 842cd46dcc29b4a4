package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// relay draws an assembled relay: outline, contact, coil, link, suppressor and
// terminal numbers.
func (a *painter) relay(c *cell) {
	g := c.geometry
	y := c.rows[0].y
	p := a.pen(c.x, y)
	outline := scene.Pen(symbol.LineMM).Dashed(1.8, 1)
	box := a.at(float64(c.x), float64(y)+g.roof)
	around := a.boxAt(c.x, y, scene.Rect{Y: g.roof, W: relayBody, H: float64(g.floor) - g.roof})
	a.surround(c.part, around)
	a.sheet.Rect(around, &outline, nil)
	a.relayContact(c, p)
	a.relayCoil(c)
	a.captionAtop(c.caption, box, a.signs.ofPart(c.part))
	for k, w := range c.returns {
		a.coilReturn(c, w, k)
	}
}

func (a *painter) relayContact(c *cell, p *symbol.Pen) {
	y := c.rows[0].y
	kind := symbol.Make
	if c.geometry.changeover {
		kind = symbol.Changeover
	}
	p.Line(0, 0, 2, 0)
	p.Line(6, 0, relayBody, 0)
	a.set.Symbol(kind).Draw(a.pen(c.x+2, y), "")
	a.terminal(c.x, y, 0.35, "30", scene.Left)
	a.terminal(c.x+relayBody, y, -0.35, "87", scene.Right)
	if c.geometry.changeover {
		p.Line(6, -2, relayBody, -2)
		a.terminal(c.x+relayBody, y-2, -0.35, "87a", scene.Right)
	}
}

// terminal writes a terminal's number above its line; dx in modules.
func (a *painter) terminal(x, y int, dx float64, number string, align scene.Align) {
	at := a.at(float64(x)+dx, float64(y))
	a.text(at.X, at.Y-gapMM, number, scene.Regular, align, scene.Ink)
}

func (a *painter) relayCoil(c *cell) {
	g := c.geometry
	y := c.rows[0].y
	row := y + g.coil
	coil := a.set.Symbol(symbol.Coil)
	coil.Draw(a.pen(c.x+2, row), "")
	p := a.pen(c.x, row)
	p.Line(0, 0, 2, 0)
	p.Line(relayDrop, 0, relayDrop, float64(g.floor-g.coil))
	a.terminal(c.x, row, 0.3, "86", scene.Left)
	at := a.at(float64(c.x)+relayDrop+0.3, float64(y+g.floor))
	a.text(at.X, at.Y-0.6, "85", scene.Regular, scene.Left, scene.Ink)
	contact := a.set.Symbol(symbol.Make)
	a.pen(c.x+2, y).Link(contact.Link.X, contact.Link.Y, coil.Link.X, float64(g.coil)+coil.Link.Y)
	if g.suppressor != "" {
		p.Line(1, 0, 1, 2.5, 2, 2.5)
		s := symbol.NewPen(a.sheet, a.at(float64(c.x+2), float64(row)+2.5))
		a.set.Symbol(g.suppressor).Draw(s, "")
		p.Dot(1, 0)
		p.Dot(relayDrop, 2.5)
	}
}

// coilReturn draws a return of terminal 85 down to its ground, the label on the
// left of it. Further returns branch off below the first.
func (a *painter) coilReturn(c *cell, w *circuit.Wire, k int) {
	g := c.geometry
	top := c.rows[0].y + g.floor
	from := top + k*(g.drop)
	to := top + (k+1)*g.drop
	x := c.x + relayDrop
	a.sheet.Begin(a.wireGroup(w, w.From))
	pts := []scene.Point{a.spot(spot{x, from}), a.spot(spot{x, to})}
	a.band(w.Number, pts)
	a.sheet.Polyline(pts, scene.Pen(symbol.WireMM))
	lines := a.wireLabel(w, a.stacked)
	at := a.at(float64(x), float64(to)-0.35)
	for i, s := range lines {
		face, colour := a.labelFace(i)
		a.text(at.X-0.9, at.Y-float64(len(lines)-1-i)*lineMM, s, face, scene.Right, colour)
	}
	if f := a.signs.ofWire(w); f > 0 {
		a.flag(f, at.X-1.2-a.labelW(w, a.stacked)-a.signs.wide/2, at.Y-a.signs.rise)
	}
	a.sheet.End()
	a.ground(w.To, x, to, scene.Right)
}
