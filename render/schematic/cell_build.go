package schematic

import "fusewright/harness/network/circuit"

// cells are the things to be arranged on sheets, and what feeds what.
type cells struct {
	list  []*cell                        // in design order
	outs  map[*circuit.Terminal]*cell    // node whose right side shows a terminal
	feeds map[*circuit.Terminal][]*inlet // wires fed from a terminal, in order
}

// builder makes the cells of a circuit.
type builder struct {
	*labels
	*cells
	into      map[*circuit.Part][]*inlet // wires that come in at a part, in order
	sheetRows int                        // rows of a sheet
}

// buildCells makes a cell of every part that is drawn in the circuit, none of them
// with more rows than a sheet has.
func buildCells(l *labels, sheetRows int) *cells {
	b := &builder{l, &cells{outs: map[*circuit.Terminal]*cell{}, feeds: map[*circuit.Terminal][]*inlet{}},
		map[*circuit.Part][]*inlet{}, sheetRows}
	b.sortWires()
	for _, p := range b.circuit.Parts {
		switch p.Kind {
		case circuit.Ground, circuit.Generator, circuit.VehicleLoads:
			continue // grounds are listed, the others stand with the battery
		case circuit.Block:
			b.addBlock(p)
			continue
		case circuit.Relay:
			if b.detached {
				b.addDetached(p)
				continue
			}
		}
		c := &cell{part: p, returns: b.wiring.returns[p]}
		c.rows = []*row{{cell: c}}
		b.addInlets(c)
		switch p.Kind {
		case circuit.Battery:
			b.shapeSource(c)
		case circuit.Relay:
			b.shapeRelay(c)
		case circuit.Load:
			b.shapeLoad(c)
		default:
			b.shapeInline(c)
		}
		b.addCell(c)
	}
	return b.cells
}

// addCell registers a cell and what its right side shows.
func (b *builder) addCell(c *cell) {
	if b.outlined || b.signs.changes != nil {
		b.raiseForFlags(c)
	}
	b.list = append(b.list, c)
	for _, o := range c.outlets {
		if b.outs[o.term] == nil {
			b.outs[o.term] = c
		}
	}
}

// raiseForFlags keeps the flags on a cell's wires clear of an outline's name, and
// those that are higher than a label clear of what stands above.
func (b *builder) raiseForFlags(c *cell) {
	top := (gapMM + 2*b.signs.half + 0.5) / 2.5
	for _, in := range c.inlets {
		if in.wire != nil && b.signs.ofWire(in.wire) > 0 {
			in.row.top = max(in.row.top, top-float64(in.off))
		}
	}
	for _, w := range c.returns {
		if b.signs.ofWire(w) > 0 {
			c.rows[0].top = max(c.rows[0].top, top)
		}
	}
}

// sortWires files every wire under the terminal it leaves and the part it feeds.
func (b *builder) sortWires() {
	for _, w := range b.circuit.Wires {
		if !isReturn(w) {
			in := &inlet{wire: w, source: w.From, term: w.To}
			b.feeds[w.From] = append(b.feeds[w.From], in)
			b.into[w.To.Part] = append(b.into[w.To.Part], in)
		}
	}
}

// addInlets gives a cell its incoming wires, in the order of the circuit.
func (b *builder) addInlets(c *cell) {
	for _, in := range b.into[c.part] {
		if c.takes(in.wire) {
			in.cell, in.row = c, c.rows[0]
			c.inlets = append(c.inlets, in)
		}
	}
}

// leadOf is the room for the labels of a cell's incoming wires.
func (b *builder) leadOf(c *cell) int {
	lead := 0
	for _, in := range c.inlets {
		if in.wire != nil {
			lead = max(lead, b.labelM(in.wire)+b.signs.leadGap(c.part))
		}
	}
	return lead
}

// spreadInlets puts further wires into one terminal below the first.
func (b *builder) spreadInlets(list []*inlet, off int) (last int) {
	for k, in := range list {
		in.off = off + k*b.inletStep()
		last = in.off
	}
	return last
}
