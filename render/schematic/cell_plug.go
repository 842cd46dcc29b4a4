package schematic

import (
	"fusewright/render/scene"
)

// plugged tells whether a cell's part comes off the harness at a plug.
func (c *cell) plugged() bool { return c.kind == partCell && c.part.Plug != nil }

// plugBody widens a symbol's body by the poles of its plug: one for each wire
// that comes in, out of them on the right. The dashed line that makes the poles
// one plug runs over the symbol, and the family's name stands on it.
func (c *cell) plugBody(body scene.Rect, out int) scene.Rect {
	if !c.plugged() {
		return body
	}
	c.inset = plugSide(len(c.inlets))
	wide := float64(c.inset+plugSide(out)) + body.W
	top := min(body.Y-0.25, -0.9) - plugHead(c.part, wide)
	return scene.Rect{Y: top, W: wide, H: body.Y + body.H - top}
}

// polesRight is the room at the right of a body that several poles with their
// link take from the caption, in modules.
func (c *cell) polesRight() int {
	if !c.plugged() || len(c.returns) < 2 {
		return 0
	}
	return plugSide(len(c.returns))
}
