package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// In the detached form a relay's contact stands in the conductor it switches and
// its coil at the end of the circuit that works it; each names sheet and zone of
// the other.

// mateWords is the widest that a reference to the other half can be.
const mateWords = "contact 88/W88"

// addDetached makes the two cells of a relay.
func (d *drawing) addDetached(p *circuit.Part) {
	contact, coil := &cell{part: p}, &cell{part: p, coil: true, returns: d.returns[p]}
	contact.mate, coil.mate = coil, contact
	for _, c := range []*cell{contact, coil} {
		c.rows = []*row{{cell: c}}
		c.geometry = relayForm(p)
		d.addInlets(c)
	}
	d.shapeContact(contact)
	d.addCell(contact)
	d.shapeEnd(coil, coilBody(coil.geometry))
	d.addCell(coil)
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

// coilCaption is the text of a coil that stands apart: the name, and where the
// contact is.
func (d *drawing) coilCaption(c *cell, widthMM float64) caption {
	words, _ := d.wordsOf(c.part)
	text := d.head(c.part).fit(words, "", widthMM, 2)
	return text.reference().solved(widthMM, d.study.coil(c.part))
}

// reference adds the line that names the place of the other half.
func (c caption) reference() caption {
	c.mate = len(c.lines)
	c.lines = append(c.lines, mateWords)
	return c
}

// shapeContact measures a contact that stands apart.
func (d *drawing) shapeContact(c *cell) {
	c.body = relayBody
	c.lead = d.leadOf(c)
	low := float64(d.spreadInlets(c.inlets, 0))
	width := float64(c.lead+c.body)*symbol.M - 1
	if len(c.inlets) > 1 {
		c.lead++
		width = relayBody*symbol.M - 1
	}
	words, details := d.wordsOf(c.part)
	c.caption = d.head(c.part).fit(words, details, width, 3).reference().solved(width, d.study.contact(c.part))
	r := c.rows[0]
	r.top = max(d.labelTop(), 1.4+d.flags.haloOf(c.part))
	if c.geometry.changeover {
		r.top = 3.4
	}
	r.bottom = max(low+0.8, captionBottom(0.25, len(c.caption.lines), d.flags.dropOf(c.part)))
	d.addRelayOutlets(c)
}
