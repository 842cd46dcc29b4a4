package cell

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// RelayBody is the width of a relay's outline.
const RelayBody = 8

// caseLead is the room of the names of the terminals that another half has.
const caseLead = 5

// RelayDrop is where terminal 85 goes down, from the outline's left.
const RelayDrop = 6

// shapeRelay measures a relay drawn as one part: contact above, coil below.
func (b *builder) shapeRelay(c *Cell) {
	c.Geometry = parts.RelayForm(c.Part)
	g := &c.Geometry
	var contact, coil []*Inlet
	for _, in := range c.Inlets {
		if in.Wire.Role == circuit.CoilFeedWire {
			coil = append(coil, in)
		} else {
			contact = append(contact, in)
		}
	}
	g.Coil = max(4, b.spreadContact(contact)+3)
	last := b.spreadInlets(coil, g.Coil)
	g.Roof = -1.75
	if g.Changeover {
		g.Roof = -3.5
	}
	if g.Rests {
		g.Return = -5
		g.Roof = -6.5
	}
	g.Floor = g.Coil + 3
	if g.Suppressor != "" {
		g.Floor = g.Coil + 4
	}
	c.Lead = max(b.leadOf(c), 2)
	if g.CaseOf != nil {
		g.Roof = -3.5
		c.Lead = max(c.Lead, caseLead)
	}
	if len(contact) > 1 || len(coil) > 1 {
		c.Lead++
	}
	c.Body = RelayBody
	low := float64(max(g.Floor, last)) + 0.8
	coils := c.CoilReturns()
	if n := len(coils); n > 0 {
		g.Drop = 2
		if b.Stacked || n > 1 {
			g.Drop = 3
		}
		for _, w := range coils {
			c.Lead = max(c.Lead, b.LabelM(w, b.Stacked)-RelayDrop+1, lettering.InM(b.GroundLeft([]*circuit.Wire{w})+0.5)-RelayDrop)
		}
		low = float64(g.Floor+g.Drop*n) + labels.GroundRoom/symbol.M
	}
	c.Caption = b.CaptionAtop(c.Part, c.Part.Ref, float64(c.Body+b.Overhang(1))*symbol.M-0.5)
	lines := float64(len(c.Caption.Lines))
	c.Rows[0].Top = -g.Roof + (lettering.GapMM+lettering.CapMM+(lines-1)*lettering.LineMM+0.4)/symbol.M
	if b.Signs.OfPart(c.Part) > 0 {
		c.Rows[0].Top += b.lift()
	}
	c.Rows[0].Bottom = low
	b.addRelayOutlets(c)
	b.addRest(c)
	if t := c.Part.Terminal("85"); len(b.Feeds[t]) > 0 {
		o := &Outlet{Cell: c, Term: t, Row: c.Rows[0], Off: g.Floor + 2, Dx: RelayDrop}
		c.Outlets = append(c.Outlets, o)
		c.Rows[0].Bottom = max(low, float64(o.Off)+0.8)
	}
}

// spreadContact puts the wires that come in at a relay's contacts below each other; of a
// contact in a return, those at 87a stand above.
func (b *builder) spreadContact(list []*Inlet) (last int) {
	var common []*Inlet
	up := -2
	for _, in := range list {
		if in.Term.Name == "87a" {
			in.Off = up
			up -= b.InletStep()
		} else {
			common = append(common, in)
		}
	}
	return b.spreadInlets(common, 0)
}

// CoilReturns are the returns of a relay's coil, ContactReturns those of its contacts.
func (c *Cell) CoilReturns() []*circuit.Wire { return c.returnsAs(circuit.CoilReturnWire) }

// ContactReturns are the wires from a relay's contacts in a return to the ground.
func (c *Cell) ContactReturns() []*circuit.Wire { return c.returnsAs(circuit.ReturnWire) }

func (c *Cell) returnsAs(role circuit.Role) (list []*circuit.Wire) {
	for _, w := range c.Returns {
		if w.Role == role {
			list = append(list, w)
		}
	}
	return list
}

// addRest makes room at the right for the grounds of a contact in a return, and for the
// return of 87a on which a half of a reversing contactor rests, above 30.
func (b *builder) addRest(c *Cell) {
	rest := c.ContactReturns()
	if len(rest) == 0 {
		return
	}
	c.Body += b.ReturnRun(rest, b.Stacked) + 1
	if c.Part.InReturn {
		return
	}
	c.Rows[0].Top = max(c.Rows[0].Top, float64(-c.Geometry.Return+(len(rest)-1)*b.ReturnStep())+b.LabelTop())
}

// addRelayOutlets shows 87 on the contact row and 87a above it; of what rests 30.
func (b *builder) addRelayOutlets(c *Cell) {
	rows := map[string]int{"87": 0, "87a": -2}
	if c.Geometry.Rests || c.Part.InReturn {
		rows = map[string]int{"30": 0}
	}
	for _, t := range c.Part.Terminals {
		off, known := rows[t.Name]
		if known && len(b.Feeds[t]) > 0 {
			c.Outlets = append(c.Outlets, &Outlet{Cell: c, Term: t, Row: c.Rows[0], Off: off, Dx: RelayBody})
		}
	}
	if len(c.Outlets) == 2 && c.Outlets[0].Off > c.Outlets[1].Off {
		c.Outlets[0], c.Outlets[1] = c.Outlets[1], c.Outlets[0]
	}
}

// In the detached form a relay's contact stands in the conductor it switches and
// its coil at the end of the circuit that works it; each names sheet and zone of
// the other.

// addDetached makes the two cells of a relay.
func (b *builder) addDetached(p *circuit.Part) {
	all := &Cell{Returns: b.Wiring.Returns[p]}
	contact, coil := &Cell{Part: p, Returns: all.ContactReturns()}, &Cell{Part: p, Coil: true, Returns: all.CoilReturns()}
	contact.Mate, coil.Mate = coil, contact
	for _, c := range []*Cell{contact, coil} {
		c.Rows = []*Row{{Cell: c}}
		c.Geometry = parts.RelayForm(p)
		b.addInlets(c)
	}
	b.shapeContact(contact)
	b.addCell(contact)
	b.shapeEnd(coil, CoilBody(coil.Geometry))
	if t := p.Terminal("85"); len(b.Feeds[t]) > 0 {
		coil.Outlets = append(coil.Outlets, &Outlet{Cell: coil, Term: t, Row: coil.Rows[0], Dx: RelayBody})
	}
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
	low := float64(b.spreadContact(c.Inlets))
	if len(c.Returns) > 0 {
		low = max(low, 2)
	}
	width := float64(c.Lead+c.Body)*symbol.M - 1
	if len(c.Inlets) > 1 {
		c.Lead++
		width = RelayBody*symbol.M - 1
	}
	words, details := b.WordsOf(c.Part)
	c.Caption = b.Head(c.Part).Fit(words, details, width, 5).Reference().Solved(width, b.Study.Contact(c.Part))
	r := c.Rows[0]
	r.Top = max(b.LabelTop(), 1.4)
	if c.Geometry.Changeover {
		r.Top = 3.4
	}
	if c.Geometry.Rests {
		c.Geometry.Return = -4
		r.Top = 4.5
	}
	if c.Geometry.CaseOf != nil {
		c.Lead = max(c.Lead, caseLead)
	}
	r.Bottom = max(low+0.8, captionBottom(0.25, len(c.Caption.Lines), b.Signs.DropOf(c.Part)))
	b.addRelayOutlets(c)
	b.addRest(c)
}
