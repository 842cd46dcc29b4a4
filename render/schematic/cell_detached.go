package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// In the detached form a relay's contact stands in the conductor it switches and
// its coil at the end of the circuit that works it; each names sheet and zone of
// the other.

// addDetached makes the two cells of a relay.
func (b *builder) addDetached(p *circuit.Part) {
	contact, coil := &cell{part: p}, &cell{part: p, coil: true, returns: b.wiring.returns[p]}
	contact.mate, coil.mate = coil, contact
	for _, c := range []*cell{contact, coil} {
		c.rows = []*row{{cell: c}}
		c.geometry = relayForm(p)
		b.addInlets(c)
	}
	b.shapeContact(contact)
	b.addCell(contact)
	b.shapeEnd(coil, coilBody(coil.geometry))
	b.addCell(coil)
}

// takes tells whether a wire that feeds a part comes in at this cell of it.
func (c *cell) takes(w *circuit.Wire) bool {
	return c.mate == nil || c.coil == (w.Role == circuit.CoilFeedWire)
}

// coilBody is the room of a coil that stands apart, its terminals' numbers and
// its suppressor included.
func coilBody(g relayShape) scene.Rect {
	r := scene.Rect{Y: -1.5, W: relayBody, H: 3}
	if g.suppressor != "" {
		r.H += 1.75
	}
	return r
}

// shapeContact measures a contact that stands apart.
func (b *builder) shapeContact(c *cell) {
	c.body = relayBody
	c.lead = b.leadOf(c)
	low := float64(b.spreadInlets(c.inlets, 0))
	width := float64(c.lead+c.body)*symbol.M - 1
	if len(c.inlets) > 1 {
		c.lead++
		width = relayBody*symbol.M - 1
	}
	words, details := b.wordsOf(c.part)
	c.caption = b.head(c.part).fit(words, details, width, 3).reference().solved(width, b.study.contact(c.part))
	r := c.rows[0]
	r.top = max(b.labelTop(), 1.4+b.signs.haloOf(c.part))
	if c.geometry.changeover {
		r.top = 3.4
	}
	r.bottom = max(low+0.8, captionBottom(0.25, len(c.caption.lines), b.signs.dropOf(c.part)))
	b.addRelayOutlets(c)
}
