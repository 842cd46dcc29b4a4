package schematic

import (
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// shapeLoad measures a load.
func (b *builder) shapeLoad(c *cell) {
	b.shapeEnd(c, c.plugBody(symbolOf(b.set, c.part).Body, len(c.returns)))
	b.addOutlets(c, c.body)
}

// shapeEnd measures the end of a circuit with its returns: the body, then the
// return wire with its label, then the ground's sign with its name below.
func (b *builder) shapeEnd(c *cell, body scene.Rect) {
	c.lead = b.leadOf(c)
	if len(c.inlets) > 1 && !c.plugged() {
		c.lead++
	}
	c.body = int(body.W)
	low := float64(b.spreadInlets(c.inlets, 0)) + 0.8
	right := float64(c.lead+c.body-c.polesRight()) * symbol.M
	if n := len(c.returns); n > 0 {
		run := b.returnRun(c.returns)
		run += b.signs.leadGap(c.part)
		c.body += run + 1 // half the ground's sign reaches beyond
		low = max(low, float64((n-1)*b.returnStep())+groundDrop/symbol.M+0.15)
		if n == 1 { // the words may reach under the return wire
			right += float64(run)*symbol.M - b.groundLeft(c.returns) - groundGap
		}
	}
	if len(c.inlets) > 1 || len(c.returns) > 1 {
		low = max(low, float64(len(c.inlets)*b.inletStep()))
	}
	if right < minCaption*symbol.M {
		c.lead += minCaption - int(right/symbol.M)
		right = minCaption * symbol.M
	}
	c.caption = b.captionOf(c.part, right-1, 3)
	if c.mate != nil {
		c.caption = b.coilCaption(c.part, right-1)
	}
	r := c.rows[0]
	r.top = max(b.labelTop(), -body.Y+0.15+b.signs.haloOf(c.part))
	base := captionBottom(body.Y+body.H, len(c.caption.lines), b.signs.dropOf(c.part))
	if len(c.inlets) > 1 {
		base += low
	}
	r.bottom = max(low, base)
}
