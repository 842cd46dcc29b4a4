package schematic

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// relayBody is the width of a relay's outline.
const relayBody = 8

// relayDrop is where terminal 85 goes down, from the outline's left.
const relayDrop = 6

// relayShape is where things stand inside a relay, in modules from its contact
// row; see paint_relay.go.
type relayShape struct {
	changeover bool
	suppressor symbol.Kind // "" when it has none
	coil       int         // row of the coil
	floor      int         // lower edge of the outline, where 85 leaves
	roof       float64     // upper edge
	drop       int         // from the floor to the ground's sign
}

// relayForm is what a relay has inside.
func relayForm(p *circuit.Part) (g relayShape) {
	if r, ok := p.Source.(*design.Relay); ok {
		g.changeover = r.Form != nil && r.Form.Changeover
		g.suppressor = map[string]symbol.Kind{
			"resistor": symbol.Resistor, "diode": symbol.Diode, "zener": symbol.Zener,
		}[r.Coil.Suppressed]
	}
	return g
}

// shapeRelay measures a relay drawn as one part: contact above, coil below.
func (d *drawing) shapeRelay(c *cell) {
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
	g.coil = max(4, d.spreadInlets(contact, 0)+3)
	last := d.spreadInlets(coil, g.coil)
	g.roof = -1.75
	if g.changeover {
		g.roof = -3.5
	}
	g.floor = g.coil + 3
	if g.suppressor != "" {
		g.floor = g.coil + 4
	}
	c.lead = max(d.leadOf(c), 2)
	if len(contact) > 1 || len(coil) > 1 {
		c.lead++
	}
	c.body = relayBody
	low := float64(max(g.floor, last)) + 0.8
	if n := len(c.returns); n > 0 {
		g.drop = 2
		if d.stacked || n > 1 {
			g.drop = 3
		}
		g.drop += d.flags.leadGap(c.part)
		for _, w := range c.returns {
			c.lead = max(c.lead, d.labelM(w)-relayDrop+1)
		}
		low = float64(g.floor+g.drop*n) + 1.75 + 0.3
	}
	c.caption = d.captionAtop(c.part, float64(c.body+d.overhang(1))*symbol.M-0.5)
	lines := float64(len(c.caption.lines))
	c.rows[0].top = -g.roof + (gapMM+capMM+(lines-1)*lineMM+0.4)/symbol.M
	if d.flags.ofPart(c.part) > 0 {
		c.rows[0].top += d.flags.lift / symbol.M
	}
	c.rows[0].bottom = low
	d.addRelayOutlets(c)
}

// addRelayOutlets shows 87 on the contact row and 87a above it.
func (d *drawing) addRelayOutlets(c *cell) {
	for _, t := range c.part.Terminals {
		off, known := map[string]int{"87": 0, "87a": -2}[t.Name]
		if known && len(d.feeds[t]) > 0 {
			c.outlets = append(c.outlets, &outlet{cell: c, term: t, row: c.rows[0], off: off, dx: relayBody})
		}
	}
	if len(c.outlets) == 2 && c.outlets[0].off > c.outlets[1].off {
		c.outlets[0], c.outlets[1] = c.outlets[1], c.outlets[0]
	}
}
