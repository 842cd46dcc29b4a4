package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// relayBody is the width of a relay's outline.
const relayBody = 8

// relayDrop is where terminal 85 goes down, from the outline's left.
const relayDrop = 6

// shapeRelay measures a relay drawn as one part: contact above, coil below.
func (b *builder) shapeRelay(c *cell) {
	c.geometry = relayForm(c.part)
	g := &c.geometry
	var contact, coil []*inlet
	for _, in := range c.inlets {
		if in.wire.Role == circuit.CoilFeedWire {
			coil = append(coil, in)
		} else {
			contact = append(contact, in)
		}
	}
	g.coil = max(4, b.spreadInlets(contact, 0)+3)
	last := b.spreadInlets(coil, g.coil)
	g.roof = -1.75
	if g.changeover {
		g.roof = -3.5
	}
	g.floor = g.coil + 3
	if g.suppressor != "" {
		g.floor = g.coil + 4
	}
	c.lead = max(b.leadOf(c), 2)
	if len(contact) > 1 || len(coil) > 1 {
		c.lead++
	}
	c.body = relayBody
	low := float64(max(g.floor, last)) + 0.8
	if n := len(c.returns); n > 0 {
		g.drop = 2
		if b.stacked || n > 1 {
			g.drop = 3
		}
		g.drop += b.signs.leadGap(c.part)
		for _, w := range c.returns {
			c.lead = max(c.lead, b.labelM(w)-relayDrop+1)
		}
		low = float64(g.floor+g.drop*n) + 1.75 + 0.3
	}
	c.caption = b.captionAtop(c.part, float64(c.body+b.overhang(1))*symbol.M-0.5)
	lines := float64(len(c.caption.lines))
	c.rows[0].top = -g.roof + (gapMM+capMM+(lines-1)*lineMM+0.4)/symbol.M
	if b.signs.ofPart(c.part) > 0 {
		c.rows[0].top += b.signs.lift / symbol.M
	}
	c.rows[0].bottom = low
	b.addRelayOutlets(c)
}

// addRelayOutlets shows 87 on the contact row and 87a above it.
func (b *builder) addRelayOutlets(c *cell) {
	for _, t := range c.part.Terminals {
		off, known := map[string]int{"87": 0, "87a": -2}[t.Name]
		if known && len(b.feeds[t]) > 0 {
			c.outlets = append(c.outlets, &outlet{cell: c, term: t, row: c.rows[0], off: off, dx: relayBody})
		}
	}
	if len(c.outlets) == 2 && c.outlets[0].off > c.outlets[1].off {
		c.outlets[0], c.outlets[1] = c.outlets[1], c.outlets[0]
	}
}
