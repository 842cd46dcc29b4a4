package arrange

import (
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/route"
)

// Page is one sheet of the circuit.
type Page struct {
	Index    int
	Cells    []*cell.Cell // as shared out, flags added by layout
	Columns  [][]*cell.Cell
	nets     []*route.Net
	ColumnX  []int // left edge of each column, in modules
	Leads    []int
	tracks   []int // between each column and the next
	Widths   []int
	Height   int  // rows used
	slot     int  // rows a way of a block has at least; 0 = what is in it
	Outlined bool // places are outlined
	Side     bool // a column of lists stands at the right
	Severed  map[*cell.Inlet]bool
	Lines    []route.Line
	OneLine  map[*cell.Inlet]bool // labels in one line though the page has two
	Cellar   [2]*cell.Row         // the source's lower row and the room kept beside it
	was      *Page                // what stood here before more was added; nil = nothing
	loose    bool                 // in the order in which that stood, but closer together
}

// Holds tells whether a cell stands on the page.
func (p *Page) Holds(c *cell.Cell) bool { return c.Sheet == p.Index+1 }

// Width is the modules from the first column to the last.
func (p *Page) Width() int {
	last := len(p.ColumnX) - 1
	return p.ColumnX[last] + p.Widths[last]
}

// TraceLines works out every line of a page from columns, rows and tracks.
func (p *Page) TraceLines() {
	var edges []int
	for col, x := range p.ColumnX {
		edges = append(edges, x+p.Widths[col])
	}
	p.Lines = route.Lines(p.nets, edges)
}
