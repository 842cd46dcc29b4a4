package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// tapBody is the width of a tap with its caption.
const tapBody = 9

// shapeInline measures fuses, switches, splices and taps: a symbol in the
// conductor with its caption below.
func (b *builder) shapeInline(c *cell) {
	s := symbolOf(b.set, c.part)
	body := c.plugBody(s.Body, b.outOf(c.part))
	c.body = int(body.W)
	c.lead = b.leadOf(c)
	if c.part.Kind == circuit.Tap {
		c.body = tapBody
		if b.signs.ofPart(c.part) > 0 {
			c.body += inM(b.signs.wide - 0.5)
		}
	}
	if c.lead+c.body < minCaption && c.part.Kind != circuit.Tap {
		c.lead = minCaption - c.body
	}
	low := float64(b.spreadInlets(c.inlets, 0))
	r := c.rows[0]
	r.top = max(b.labelTop(), -body.Y+0.15+b.signs.haloOf(c.part))
	width := float64(c.lead+c.body)*symbol.M - 1
	if len(c.inlets) > 1 && !c.plugged() { // the bar that joins them stands where the caption would
		c.lead++
		width = max(float64(c.body), minCaption)*symbol.M - 1
		c.body = max(c.body, minCaption)
	}
	most := 3
	if c.part.Kind == circuit.Tap {
		most = 5
	}
	c.caption = b.captionOf(c.part, width, most)
	r.bottom = max(low+0.8, captionBottom(s.Body.Y+s.Body.H, len(c.caption.lines), b.signs.dropOf(c.part))+c.polesBelow())
	b.addOutlets(c, int(body.W))
}

// polesBelow is how far the poles of a plug push the caption down, in modules.
func (c *cell) polesBelow() float64 {
	if n := len(c.inlets); n > 1 && c.plugged() {
		return float64(c.inlets[n-1].off)
	}
	return 0
}

// addOutlets shows the first terminal that feeds anything.
func (b *builder) addOutlets(c *cell, dx int) {
	for _, t := range c.part.Terminals {
		if len(b.feeds[t]) > 0 && len(c.outlets) == 0 {
			c.outlets = append(c.outlets, &outlet{cell: c, term: t, row: c.rows[0], dx: dx})
		}
	}
}

// captionBottom is how far captions below a symbol reach, in modules below the
// row.
func captionBottom(symbolBottom float64, lines int, dropMM float64) float64 {
	return (captionBase(symbolBottom, dropMM)+float64(lines-1)*lineMM+descMM)/symbol.M + 0.12
}

// captionBase is the baseline of the first caption line, in mm below the row,
// lowered for a sign.
func captionBase(symbolBottom, dropMM float64) float64 {
	return max(symbolBottom, 0.25)*symbol.M + gapMM + 0.1 + capMM + dropMM
}
