package cell

import (
	"fusewright/render/scene"
	"fusewright/render/schematic/labels"
)

// Plugged tells whether a cell's part comes off the harness at a plug.
func (c *Cell) Plugged() bool { return c.Kind == Part && c.Part.Plug != nil }

// PlugBody widens a symbol's body by the poles of its plug: one for each wire
// that comes in, out of them on the right. The dashed line that makes the poles
// one plug runs over the symbol, and the family's name stands on it.
func (c *Cell) PlugBody(body scene.Rect, out int) scene.Rect {
	if !c.Plugged() {
		return body
	}
	c.Inset = labels.PlugSide(len(c.Inlets))
	wide := float64(c.Inset+labels.PlugSide(out)) + body.W
	top := min(body.Y-0.25, -0.9) - labels.PlugHead(c.Part, wide)
	return scene.Rect{Y: top, W: wide, H: body.Y + body.H - top}
}

// PolesRight is the room at the right of a body that several poles with their
// link take from the caption, in modules.
func (c *Cell) PolesRight() int {
	if !c.Plugged() || len(c.Returns) < 2 {
		return 0
	}
	return labels.PlugSide(len(c.Returns))
}
