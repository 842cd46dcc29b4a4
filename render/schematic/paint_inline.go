package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// inline draws a symbol in the conductor with its caption below.
func (a *painter) inline(c *cell) {
	s := symbolOf(a.set, c.part)
	y := c.rows[0].y
	x := c.x
	body := c.plugBody(s.Body, len(c.outlets))
	a.surround(c.part, a.boxAt(x, y, body))
	s.Draw(a.pen(x+c.inset, y), "")
	a.drawPlug(c, body, []int{y}[:len(c.outlets)])
	flag := a.signs.ofPart(c.part)
	at := a.at(float64(x), float64(y))
	left := at.X - float64(c.lead)*symbol.M + 0.5
	if len(c.inlets) > 1 && !c.plugged() || c.part.Kind == circuit.Tap {
		left = at.X + 0.4
	}
	right := at.X + float64(c.body)*symbol.M - 0.5
	mid := at.X + body.W/2*symbol.M
	base := at.Y + captionBase(s.Body.Y+s.Body.H, a.signs.dropFor(flag)) + c.polesBelow()*symbol.M
	a.caption(c.caption, centred(c.caption, mid, left, right), base)
}
