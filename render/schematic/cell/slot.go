package cell

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/labels"
)

// Slots keep the room of loads that are not there: of those that are gone while the
// design keeps their numbers, and behind a fuse, switch or diode that feeds nothing. They
// are laid out as a load like it would be, and nothing is drawn in them.

// addSlots makes the slots, not yet measured, and hangs them on what feeds them.
func (b *builder) addSlots() (slots []*Cell) {
	if b.Slots == labels.NoSlots {
		return nil
	}
	open := map[*circuit.Terminal]bool{}
	for _, g := range b.Circuit.GoneLoads() {
		if like := b.loadLike(g.From, g.Letter()); like != nil {
			slots = append(slots, b.addSlot(g.From, g.Feed, like))
			open[g.From] = true
		}
	}
	for _, p := range b.Circuit.Parts {
		if b.LeavesOut(p) {
			continue
		}
		if t := openEnd(p); t != nil && !open[t] && len(b.Feeds[t]) == 0 && len(b.into[p]) > 0 {
			if like := b.loadLike(t, ""); like != nil {
				slots = append(slots, b.addSlot(t, "", like))
			}
		}
	}
	return slots
}

// openEnd is where something would hang on a part in line; nil of other parts.
func openEnd(p *circuit.Part) *circuit.Terminal {
	switch p.Kind {
	case circuit.Fuse, circuit.Switch, circuit.Diode, circuit.Resistor:
		if !p.InReturn {
			return p.Terminal("out")
		}
	}
	return nil
}

// loadLike is the load that a slot is measured by: one fed from the same terminal, else
// from the same part, else the first of the same letter, else the first; nil when there is none.
func (b *builder) loadLike(from *circuit.Terminal, letter string) (like *circuit.Part) {
	best := 0
	for _, p := range b.Circuit.Parts {
		if p.Kind != circuit.Load || p.InReturn || len(b.into[p]) == 0 {
			continue
		}
		rank := 1
		switch source := b.into[p][0].Source; {
		case source == from:
			rank = 4
		case source.Part == from.Part:
			rank = 3
		case design.Number{Label: p.Ref}.Letter() == letter:
			rank = 2
		}
		if rank > best {
			like, best = p, rank
		}
	}
	return like
}

// addSlot hangs a slot on a terminal, where its wire stood by its number.
func (b *builder) addSlot(from *circuit.Terminal, number string, like *circuit.Part) *Cell {
	wire := *b.into[like][0].Wire
	wire.Number, wire.From = number, from
	c := &Cell{Part: like, Empty: true, Returns: b.Wiring.Returns[like]}
	c.Rows = []*Row{{Cell: c}}
	in := &Inlet{Cell: c, Row: c.Rows[0], Wire: &wire, Source: from, Term: wire.To}
	c.Inlets = []*Inlet{in}
	list := b.Feeds[from]
	at := slices.IndexFunc(list, func(q *Inlet) bool {
		return q.Wire != nil && design.Number{Label: q.Wire.Number}.Compare(design.Number{Label: number}) > 0
	})
	if at < 0 {
		at = len(list)
	}
	b.Feeds[from] = slices.Insert(slices.Clone(list), at, in)
	return c
}

// shapeSlot measures a slot.
func (b *builder) shapeSlot(c *Cell) {
	b.shapeLoad(c)
	c.Outlets = nil // the return of the load that it is measured by goes on from that alone
	if b.Slots == labels.LeanSlots {
		c.Lead, c.Body = 0, 0
		r := c.Rows[0]
		r.Top = b.LabelTop()
		r.Bottom = float64(b.LoadRows()) - r.Top
	}
}

// Stood tells whether a slot was that of a load of an earlier circuit: fed from the same
// end, by the wire of the same number where the slot has one.
func (c *Cell) Stood(o *Cell) bool {
	if o.Part.Kind != circuit.Load || len(o.Inlets) != 1 || o.Inlets[0].Wire == nil {
		return false
	}
	is, was := c.Inlets[0], o.Inlets[0]
	return is.Source.Text() == was.Source.Text() && (is.Wire.Number == "" || is.Wire.Number == was.Wire.Number)
}

// Fill draws in a slot what stood there.
func (c *Cell) Fill(o *Cell) {
	c.Empty, c.Part, c.Returns, c.Caption, c.Inset, c.Body = false, o.Part, o.Returns, o.Caption, o.Inset, o.Body
	c.Flat, c.FlatReturns = false, false
	c.Rows[0].Top, c.Rows[0].Bottom = o.Rows[0].Top, o.Rows[0].Bottom
	c.Inlets[0].Wire, c.Inlets[0].Term = o.Inlets[0].Wire, o.Inlets[0].Term
}
