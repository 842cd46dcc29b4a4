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

	full  int // rows of everything it feeds
	sheet int // on which it stands, from 1; 0 = on none yet
	col   int
	x     int // left edge of the body, from the left of the field
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

// firstOf is the first inlet of the same terminal; blocks join at their bar and
// plugs behind their poles.
func firstOf(in *inlet) *inlet {
	c := in.cell
	if c.kind != partCell || len(c.ways) > 0 || c.plugged() {
		return in
	}
	for _, q := range c.inlets {
		if q.term == in.term {
			return q
		}
	}
	return in
}

// sharesTerminal tells whether a wire is joined by others just before its
// terminal.
func sharesTerminal(in *inlet) bool {
	for _, q := range in.cell.inlets {
		if q != in && firstOf(q) == firstOf(in) {
			return true
		}
	}
	return false
}
