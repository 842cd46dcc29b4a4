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
	case circuit.Fuse, circuit.Switch, circuit.Diode:
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
	if b.Slots == labels.LeanSlots {
		c.Lead, c.Body = 0, 0
		r := c.Rows[0]
		r.Top = b.LabelTop()
		r.Bottom = float64(b.LoadRows()) - r.Top
	}
}

// Fill draws in slots what stood there in an earlier circuit, where it has the room and a
// line leads there, and tells its references and wire numbers.
func (s *Cells) Fill(earlier *Cells, reached func(*Cell) bool) (shown map[string]bool) {
	shown = map[string]bool{}
	for _, c := range s.List {
		if !c.Empty || !reached(c) {
			continue
		}
		for _, o := range earlier.List {
			if !c.stood(o) || slices.ContainsFunc(s.List, func(q *Cell) bool { return !q.Empty && q.Part.Name == o.Part.Name }) || !c.takesIn(o) {
				continue
			}
			c.Empty, c.Part, c.Returns, c.Caption, c.Inset = false, o.Part, o.Returns, o.Caption, o.Inset
			c.RunMore, c.Body = c.RunMore+c.Body-o.Body, o.Body
			in := c.Inlets[0]
			in.Wire, in.Term = o.Inlets[0].Wire, o.Inlets[0].Term
			shown[o.Part.Ref] = true
			for _, w := range c.Wires() {
				shown[w.Number] = true
			}
			break
		}
	}
	return shown
}

// stood tells whether a slot was that of a load: fed from the same end, by the wire of
// the same number where the slot has one.
func (c *Cell) stood(o *Cell) bool {
	if o.Part.Kind != circuit.Load || len(o.Inlets) != 1 || o.Inlets[0].Wire == nil {
		return false
	}
	is, was := c.Inlets[0], o.Inlets[0]
	return is.Source.Text() == was.Source.Text() && (is.Wire.Number == "" || is.Wire.Number == was.Wire.Number)
}

// takesIn tells whether a cell has the room of another.
func (c *Cell) takesIn(o *Cell) bool {
	if o.Lead > c.Lead || o.Body > max(c.Wide, c.Body) || o.Cellar > c.Cellar {
		return false
	}
	for k, r := range c.Rows {
		if o.Rows[k].Top > r.Top || o.Rows[k].Bottom > r.Bottom {
			return false
		}
	}
	return true
}
