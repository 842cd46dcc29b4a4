package schematic

import (
	"fusewright/harness/network/circuit"
)

// cellKind is what a cell holds.
type cellKind int

const (
	partCell  cellKind = iota
	inCell             // flag: a terminal shown elsewhere
	outCell            // flag: a terminal goes on elsewhere
	passCell           // a wire on its way through a column
	blankCell          // room kept free for the source's cellar
)

// cell is one thing in a column: from left to right a lead with the labels of
// the wires that come in, then the body. Measures are in modules.
type cell struct {
	kind    cellKind
	part    *circuit.Part
	term    *circuit.Terminal // of flags and passing wires
	inlets  []*inlet
	outlets []*outlet
	returns []*circuit.Wire
	rows    []*row // one; blocks have one per way
	lead    int
	body    int
	caption caption

	piece, pieces int // of a block too long for a sheet, from 1
	ways          []*way
	geometry      relayShape

	inset   int  // of the symbol from the left of the body, for a plug
	flat    bool // labels of the wires that come in have room for one line
	runMore int  // modules by which returns are longer than measured

	flatReturns bool  // labels of the returns have room for one line
	coil        bool  // the coil of a relay in the detached form
	mate        *cell // the other half of a relay in the detached form

	full int // rows of everything it feeds
	page *page
	col  int
	x    int // left edge of the body, from the left of the field
}

// row is a horizontal line of a cell's body; its place is found by rows.go.
type row struct {
	cell        *cell
	index       int
	top, bottom float64 // room needed above and below, in modules
	y           int     // from the top of the field
}

// inlet is where a wire comes in on the left. wire is nil for the bar of a
// block carried on from another piece and for flags.
type inlet struct {
	cell   *cell
	wire   *circuit.Wire
	source *circuit.Terminal
	term   *circuit.Terminal
	row    *row
	off    int // below the row
	dx     int // where the wire ends, from the left of the body
}

// outlet is where wires leave on the right.
type outlet struct {
	cell *cell
	term *circuit.Terminal
	row  *row
	off  int
	dx   int
}

func (i *inlet) y() int  { return i.row.y + i.off }
func (o *outlet) y() int { return o.row.y + o.off }

// way is one output of a block.
type way struct {
	number string
	term   *circuit.Terminal
	ref    string // "F3"
	words  string // "15 A"
	kind   wayKind
}

type wayKind int

const (
	fusedWay wayKind = iota
	breakerWay
	ptcWay
	linkedWay // no fuse in it
	spareWay
)

// buildCells makes a cell of every part that is drawn in the circuit.
func (d *drawing) buildCells() {
	d.sortWires()
	for _, p := range d.circuit.Parts {
		switch p.Kind {
		case circuit.Ground, circuit.Generator, circuit.VehicleLoads:
			continue // grounds are listed, the others stand with the battery
		case circuit.Block:
			d.addBlock(p)
			continue
		case circuit.Relay:
			if d.detached {
				d.addDetached(p)
				continue
			}
		}
		c := &cell{part: p, returns: d.returns[p]}
		c.rows = []*row{{cell: c}}
		d.addInlets(c)
		switch p.Kind {
		case circuit.Battery:
			d.shapeSource(c)
		case circuit.Relay:
			d.shapeRelay(c)
		case circuit.Load:
			d.shapeLoad(c)
		default:
			d.shapeInline(c)
		}
		d.addCell(c)
	}
}

// addCell registers a cell and what its right side shows.
func (d *drawing) addCell(c *cell) {
	if d.outlined || d.changes != nil {
		d.raiseForFlags(c)
	}
	d.cells = append(d.cells, c)
	if d.byPart[c.part] == nil {
		d.byPart[c.part] = c
	}
	for _, o := range c.outlets {
		if d.outs[o.term] == nil {
			d.outs[o.term] = c
		}
	}
}

// raiseForFlags keeps the flags on a cell's wires clear of an outline's name, and
// those that are higher than a label clear of what stands above.
func (d *drawing) raiseForFlags(c *cell) {
	top := (gapMM + 2*d.flags.half + 0.5) / 2.5
	for _, in := range c.inlets {
		if in.wire != nil && d.flags.ofWire(in.wire) > 0 {
			in.row.top = max(in.row.top, top-float64(in.off))
		}
	}
	for _, w := range c.returns {
		if d.flags.ofWire(w) > 0 {
			c.rows[0].top = max(c.rows[0].top, top)
		}
	}
}

// sortWires files every wire under the terminals and parts at its ends.
func (d *drawing) sortWires() {
	for _, w := range d.circuit.Wires {
		if w.Role == circuit.ReturnWire || w.Role == circuit.CoilReturnWire {
			d.returns[w.From.Part] = append(d.returns[w.From.Part], w)
			d.landed[w.To.Part] = append(d.landed[w.To.Part], w)
			continue
		}
		d.feeds[w.From] = append(d.feeds[w.From], &inlet{wire: w, source: w.From, term: w.To})
	}
}

// addInlets gives a cell its incoming wires, in the order of the circuit.
func (d *drawing) addInlets(c *cell) {
	for _, w := range d.circuit.Wires {
		if w.To.Part != c.part || w.Role == circuit.ReturnWire || w.Role == circuit.CoilReturnWire {
			continue
		}
		for _, in := range d.feeds[w.From] {
			if in.wire == w && c.takes(w) {
				in.cell, in.row = c, c.rows[0]
				c.inlets = append(c.inlets, in)
			}
		}
	}
}

// leadOf is the room for the labels of a cell's incoming wires.
func (d *drawing) leadOf(c *cell) int {
	lead := 0
	for _, in := range c.inlets {
		if in.wire != nil {
			lead = max(lead, d.labelM(in.wire)+d.flags.leadGap(c.part))
		}
	}
	return lead
}

// labelM is the room a wire's label needs along the wire.
func (d *drawing) labelM(w *circuit.Wire) int { return d.labelMOf(w, d.stacked) }

// labelMOf is labelM for a label in two lines or in one.
func (d *drawing) labelMOf(w *circuit.Wire, stacked bool) int {
	widest := d.labelW(w, stacked)
	if d.flags.ofWire(w) > 0 {
		widest += d.flags.wide
	}
	return inM(widest + 1.6)
}

// labelTop is the room a label needs above its wire.
func (d *drawing) labelTop() float64 {
	if d.stacked {
		return (gapMM + capMM + lineMM + 0.3) / 2.5
	}
	return (gapMM + capMM + 0.3) / 2.5
}

// inletStep is the distance between two wires that come in at one terminal.
func (d *drawing) inletStep() int {
	if d.stacked || len(d.flags.list) > 0 {
		return 3
	}
	return 2
}

// spreadInlets puts further wires into one terminal below the first.
func (d *drawing) spreadInlets(list []*inlet, off int) (last int) {
	for k, in := range list {
		in.off = off + k*d.inletStep()
		last = in.off
	}
	return last
}
