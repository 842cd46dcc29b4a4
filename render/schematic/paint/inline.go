package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// inline draws a symbol in the conductor with its caption below.
func (a *painter) inline(c *cell.Cell) {
	s := parts.SymbolOf(a.Set, c.Part)
	y := c.Rows[0].Y
	x := c.X
	body := c.PlugBody(s.Body, len(c.Outlets))
	a.surround(c.Part, a.boxAt(x, y, body))
	s.Draw(a.pen(x+c.Inset, y), "")
	a.drawPlug(c, body, []int{y}[:len(c.Outlets)])
	flag := a.Signs.OfPart(c.Part)
	at := a.at(float64(x), float64(y))
	left := at.X - float64(c.Lead)*symbol.M + 0.5
	if len(c.Inlets) > 1 && !c.Plugged() || c.Part.Kind == circuit.Tap {
		left = at.X + 0.4
	}
	right := at.X + float64(c.Body)*symbol.M - 0.5
	mid := at.X + body.W/2*symbol.M
	base := at.Y + cell.CaptionBase(s.Body.Y+s.Body.H, a.Signs.DropFor(flag)) + c.PolesBelow()*symbol.M
	a.caption(c.Caption, centred(c.Caption, mid, left, right), base)
}
