// Package cell makes the things that stand in the columns of a sheet: each part
// with the labels of its wires, measured but not yet placed. Measures in modules.
package cell

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"slices"
)

// Kind is what a cell holds.
type Kind int

const (
	Part  Kind = iota
	In         // flag: a terminal shown elsewhere
	Out        // flag: a terminal goes on elsewhere
	Pass       // a wire on its way through a column
	Blank      // room kept free for the source's cellar
)

// Cell is one thing in a column: from left to right a lead with the labels of
// the wires that come in, then the body. Measures are in modules.
type Cell struct {
	Kind    Kind
	Part    *circuit.Part
	Term    *circuit.Terminal // of flags and passing wires
	Inlets  []*Inlet
	Outlets []*Outlet
	Returns []*circuit.Wire
	Rows    []*Row // one; blocks have one per way
	Lead    int
	Body    int
	Wide    int // the body in the widest way of drawing it; 0 = as it is
	Caption lettering.Caption

	Piece, Pieces int // of a block too long for a sheet, from 1
	Ways          []*parts.Way
	Named         int // modules from the bar of a switch to its contacts, for the names of its outputs
	Box           int // width of the outline of a block or switch; that of one in a return has its grounds beside it
	Geometry      parts.RelayShape

	Empty bool // the slot of a load that is not there, or a flag for such: nothing is drawn

	Inset   int  // of the symbol from the left of the body, for a plug
	Flat    bool // labels of the wires that come in have room for one line
	Longer  int  // modules by which returns are longer for the caption of a load that feeds on
	RunMore int  // modules by which returns are longer than measured

	FlatReturns bool  // labels of the returns have room for one line
	Coil        bool  // the coil of a relay in the detached form
	Mate        *Cell // the other half of a relay in the detached form

	Cellar   int   // width of the source's lower part
	Bar      int   // where its ground bars stand, from the left of the body
	Turn     int   // where their wires turn to the battery
	MainRows []int // rows of its main returns, below the battery's foot

	Full  int // rows of everything it feeds
	Sheet int // on which it stands, from 1; 0 = on none yet
	Tier  int // of its sheet, from 0 at the top: each has columns of its own
	Col   int
	X     int // left edge of the body, from the left of the field
}

// Row is a horizontal line of a cell's body; its place is found by rows.go.
type Row struct {
	Cell        *Cell
	Index       int
	Top, Bottom float64 // room needed above and below, in modules
	Y           int     // from the top of the field
}

// Inlet is where a wire comes in on the left. wire is nil for the bar of a
// block carried on from another piece and for flags.
type Inlet struct {
	Cell   *Cell
	Wire   *circuit.Wire
	Source *circuit.Terminal
	Term   *circuit.Terminal
	Row    *Row
	Off    int // below the row
	Dx     int // where the wire ends, from the left of the body
}

// Turns tells of the wire that feeds a motor the other way round, at its far end.
func (i *Inlet) Turns() bool { return i.Wire != nil && i.Term == i.Wire.From }

// Outlet is where wires leave on the right.
type Outlet struct {
	Cell *Cell
	Term *circuit.Terminal
	Row  *Row
	Off  int
	Dx   int
}

// Y is the row of the grid on which the wire comes in.
func (i *Inlet) Y() int  { return i.Row.Y + i.Off }
func (o *Outlet) Y() int { return o.Row.Y + o.Off }

// FirstOf is the first inlet of the same terminal; blocks join at their bar and
// plugs behind their poles.
func FirstOf(in *Inlet) *Inlet {
	c := in.Cell
	if c.Kind != Part || len(c.Ways) > 0 && !c.Part.InReturn || c.Plugged() {
		return in
	}
	for _, q := range c.Inlets {
		if q.Term == in.Term {
			return q
		}
	}
	return in
}

// SharesTerminal tells whether a wire is joined by others just before its
// terminal, or what hangs on its load leaves there.
func SharesTerminal(in *Inlet) bool {
	return in.Cell.Onward() != nil || slices.ContainsFunc(in.Cell.Inlets, func(q *Inlet) bool { return q != in && FirstOf(q) == FirstOf(in) })
}

// Wires are those that come in at a cell and its returns.
func (c *Cell) Wires() (list []*circuit.Wire) {
	for _, in := range c.Inlets {
		if in.Wire != nil {
			list = append(list, in.Wire)
		}
	}
	return append(list, c.Returns...)
}
