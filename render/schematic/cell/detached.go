package cell

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// In the detached form a relay's contact stands in the conductor it switches and
// its coil at the end of the circuit that works it; each names sheet and zone of
// the other.

// addDetached makes the two cells of a relay.
func (b *builder) addDetached(p *circuit.Part) {
	contact, coil := &Cell{Part: p}, &Cell{Part: p, Coil: true, Returns: b.Wiring.Returns[p]}
	contact.Mate, coil.Mate = coil, contact
	for _, c := range []*Cell{contact, coil} {
		c.Rows = []*Row{{Cell: c}}
		c.Geometry = parts.RelayForm(p)
		b.addInlets(c)
	}
	b.shapeContact(contact)
	b.addCell(contact)
	b.shapeEnd(coil, CoilBody(coil.Geometry))
	b.addCell(coil)
}

// takes tells whether a wire that feeds a part comes in at this cell of it.
func (c *Cell) takes(w *circuit.Wire) bool {
	return c.Mate == nil || c.Coil == (w.Role == circuit.CoilFeedWire)
}

// CoilBody is the room of a coil that stands apart, its terminals' numbers and
// its suppressor included.
func CoilBody(g parts.RelayShape) scene.Rect {
	r := scene.Rect{Y: -1.5, W: RelayBody, H: 3}
	if g.Suppressor != "" {
		r.H += 1.75
	}
	return r
}

// shapeContact measures a contact that stands apart.
func (b *builder) shapeContact(c *Cell) {
	c.Body = RelayBody
	c.Lead = b.leadOf(c)
	low := float64(b.spreadInlets(c.Inlets, 0))
	width := float64(c.Lead+c.Body)*symbol.M - 1
	if len(c.Inlets) > 1 {
		c.Lead++
		width = RelayBody*symbol.M - 1
	}
	words, details := b.WordsOf(c.Part)
	c.Caption = b.Head(c.Part).Fit(words, details, width, 3).Reference().Solved(width, b.Study.Contact(c.Part))
	r := c.Rows[0]
	r.Top = max(b.LabelTop(), 1.4+b.Signs.HaloOf(c.Part))
	if c.Geometry.Changeover {
		r.Top = 3.4
	}
	r.Bottom = max(low+0.8, captionBottom(0.25, len(c.Caption.Lines), b.Signs.DropOf(c.Part)))
	b.addRelayOutlets(c)
}
